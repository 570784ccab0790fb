/**
 * How steps and their tests share pages, in Typst: a piece of the leaflet's template. The heights of all steps are known before the first is set, so that one scale is
 * chosen for all of their drawings.
 */
export const STEPS = `
#let fits(body, size) = measure(width: size.width, body).height <= size.height
// On one page, but for what no page has room for.
#let whole(body, size) = block(width: 100%, breakable: not fits(body, size), body)

// Tests in rows: on wide paper two beside each other, each with its words below its picture, where that is lower.
#let test-rows(tests, closing, width) = {
  let alone(test) = beside(test, test.said)
  let height(body) = measure(width: width, body).height
  let rows = ()
  let left = tests
  while left.len() > 0 {
    let two = left.slice(0, calc.min(2, left.len()))
    let paired = pair(two)
    if width >= 150mm and two.len() == 2 and height(paired) < two.map(test => height(alone(test))).sum() {
      rows.push(paired)
      left = left.slice(2)
    } else {
      rows.push(alone(left.first()))
      left = left.slice(1)
    }
  }
  if rows == () or closing == none { rows } else {
    (..rows.slice(0, -1), rows.last() + block(above: 0.9em, closing))
  }
}

// How high a step is, and what it consists of. Its drawing alone is larger at another scale.
#let step-parts(b, size, shown) = {
  let said(blocks) = blocks.map(shown).join()
  let work(scale) = said(b.blocks.map(one => if one.is != "figure" { one } else {
    let p = one.picture
    (..one, picture: (..p, width: p.width * scale, height: p.height * scale))
  }))
  let height(body) = measure(width: size.width, body).height
  let rows = test-rows(b.tests.map(test => (..test, said: said(test.blocks))), said(b.closing), size.width)
  let heading = strong(b.heading)
  (
    work: work,
    least: height(work(1)),
    drawn: b.blocks.filter(one => one.is == "figure").map(one => mm(one.picture.height)).sum(default: 0mm),
    rows: rows,
    heights: rows.map(height),
    heading: heading,
    head: height(heading),
  )
}
#let step-height(one, scale) = one.least + one.drawn * (scale - 1)
#let test-gap = 1.2em
#let step-gap = 1.8em
#let with-tests(one, scale) = step-height(one, scale) + one.heights.map(h => h + test-gap.to-absolute()).sum(default: 0pt)

// The pages that steps take at a scale, and half a page for each test that is not on the page of its step.
#let pages-taken(items, scale, from, height) = {
  let (page, y, away) = (0, from, 0)
  for one in items {
    let whole = if "height" in one { one.height } else { with-tests(one, scale) }
    let divided = whole > height and one.at("rows", default: ()) != ()
    let first = if divided { step-height(one, scale) } else { whole }
    if y > 0pt and y + step-gap.to-absolute() + first > height { (page, y) = (page + 1, first) } else {
      y += first + if y > 0pt { step-gap.to-absolute() } else { 0pt }
    }
    if divided {
      let begun = page
      let headed = none
      for h in one.heights {
        let needed = h + test-gap.to-absolute() + if headed == page { 0pt } else { one.head + test-gap.to-absolute() }
        if y + needed > height {
          page += 1
          y = h + one.head + test-gap.to-absolute()
        } else { y += needed }
        headed = page
        if page > begun { away += 1 }
      }
    }
  }
  page + away / 2
}

#let steps-shown(b, size, shown) = {
  let items = b.blocks.map(one => if one.is == "step" { step-parts(one, size, shown) } else {
    let body = one.blocks.map(shown).join()
    (body: body, height: measure(width: size.width, body).height)
  })
  let from = here().position().y - mm(paper.margin)
  let scales = range(7).map(i => b.largest - (b.largest - 1) * i / 6)
  let costs = scales.map(scale => pages-taken(items, scale, from, size.height))
  let scale = scales.at(costs.position(cost => cost == calc.min(..costs)))
  for one in items {
    let together(body, height) = block(above: step-gap, width: 100%, breakable: height > size.height, body)
    if "height" in one { together(one.body, one.height) } else {
      let whole = with-tests(one, scale)
      let work = (one.work)(scale)
      if whole <= size.height or one.rows == () {
        together((work, ..one.rows).join(v(test-gap, weak: true)), whole)
      } else {
        together(work, step-height(one, scale))
        grid(
          row-gutter: test-gap,
          grid.header(repeat: true, one.heading),
          ..one.rows.map(row => grid.cell(breakable: false, row)),
        )
      }
    }
  }
}
`;
