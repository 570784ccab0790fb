throw new Error('the drawer of parts is empty');

export default {};
