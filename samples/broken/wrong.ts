export default {
  kit: 'robin',
  title: 'A script with two mistakes',
  parts: {
    neck: { kind: 'single-coil', resistance: '5,7k' },
    output: { kind: 'jack' },
  },
  joints: ['neck.hot > output.tip', 'neck.ground > output.sleve'],
};
