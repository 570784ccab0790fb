/**
 * The leaflet's page in Typst. The template never changes: the leaflet reaches it as data, by `sys.inputs`, and its texts are
 * content as they stand, so that nothing that somebody writes into a kit is ever read as markup.
 *
 * Type is 8 points at least, but for what stands within drawings.
 */
import { STEPS } from './typst-steps.ts';

export const TEMPLATE = `
#let leaflet = json(bytes(sys.inputs.leaflet))
#let ink = rgb("#1d2b36")
#let quiet = rgb("#52606b")
#let rule = rgb("#c3cad0")
#let tint = rgb(leaflet.at("sender", default: (:)).at("colour", default: "#1d2b36"))
#let paper = leaflet.paper
#let small-page = paper.width < 170
#let narrow-page = leaflet.narrow

#set document(title: leaflet.title, keywords: (leaflet.generator,), date: none)
#set text(
  font: "Inter",
  fallback: false,
  lang: leaflet.language,
  size: if small-page { 8.5pt } else { 9.5pt },
  fill: ink,
)
#set par(leading: 0.62em, spacing: 0.9em)
#set list(marker: text(fill: quiet)[•], indent: 0pt, body-indent: 0.6em, spacing: 0.75em)

// A word wider than its line is divided wherever it has to be; an address of mail is not yet so long.
#let dividing(least, body) = {
  show regex("\\S{" + str(least) + ",}"): it => it.text.clusters().join(sym.zws)
  body
}
#let narrow = if small-page { 18 } else { 24 }
#show: dividing.with(if small-page { 40 } else { 60 })

#let mm(value) = value * 1mm
// One line of a text, however long it is.
#let clipped(words) = {
  set text(top-edge: "ascender", bottom-edge: "descender")
  block(height: 1.25em, width: 100%, clip: true, align(top, words))
}
#let sender = leaflet.at("sender", default: none)
#let running = context {
  set text(size: 8pt, fill: quiet)
  if counter(page).get().first() > 1 {
    grid(
      columns: (1fr, auto),
      column-gutter: 6mm,
      align: top,
      clipped(leaflet.running), text(top-edge: "ascender", leaflet.revision),
    )
    v(-2mm)
    line(length: 100%, stroke: 0.4pt + rule)
  }
}
#let numbers = context {
  set text(size: 8pt, fill: quiet)
  grid(
    columns: (1fr, auto),
    column-gutter: 6mm,
    align: top,
    clipped(if sender == none { "" } else { sender.name }),
    text(top-edge: "ascender")[#counter(page).display() / #counter(page).final().first()],
  )
}
#set page(
  width: mm(paper.width),
  height: mm(paper.height),
  margin: mm(paper.margin),
  header: running,
  footer: numbers,
  header-ascent: 35%,
  footer-descent: 40%,
)

#show heading: it => block(
  above: if it.level == 1 { 1.6em } else { 1.3em },
  below: 0.8em,
  sticky: true,
  text(
    size: if it.level == 1 { if small-page { 13pt } else { 15pt } } else { if small-page { 10pt } else { 11pt } },
    weight: "bold",
    fill: if it.level == 1 { tint } else { ink },
    it.body,
  ),
)
#show outline.entry: set block(above: if small-page { 0.55em } else { 0.7em })

#let tick = box(width: 3.2mm, height: 3.2mm, stroke: 0.8pt + ink, radius: 0.4mm, baseline: 0.5mm)
#let picture(p) = image(bytes(p.svg), format: "svg", width: mm(p.width), height: mm(p.height), alt: p.alt)

#let lined(words) = words.split("\\n").join(linebreak())

#let cell(c) = {
  if c.is == "tick" { tick } else if c.is == "said" {
    strong(lined(c.name))
    linebreak()
    lined(c.text)
  } else if c.is == "picture" { picture(c.picture) } else if c.at("strong", default: false) {
    strong(lined(c.text))
  } else { lined(c.text) }
}

#let tabled(b) = {
  // Columns of narrow paper are narrower than many a word.
  set text(size: if small-page { 8pt } else { 8.5pt }, hyphenate: narrow-page)
  show: dividing.with(narrow)
  table(
    columns: b.columns.map(c => if "share" in c { c.share * 1fr } else { auto }),
    align: b.columns.map(c => (if c.at("align", default: "") == "right" { right } else { left }) + horizon),
    inset: (x: if narrow-page { 1mm } else { 1.6mm }, y: 1.5mm),
    stroke: (x, y) => (bottom: if y == 0 { 0.8pt + ink } else { 0.4pt + rule }),
    table.header(repeat: true, ..b.columns.map(c => text(size: 8pt, fill: quiet, weight: "bold", c.head))),
    ..b.rows.map(row => row.zip(b.columns).map(((c, column)) => table.cell(breakable: false, {
      // Figures of one width stand below each other; in running text they would leave gaps beside hyphens.
      set text(number-width: if column.at("align", default: "") == "right" { "tabular" } else { "proportional" })
      cell(c)
    }))).flatten(),
  )
}

// A picture and words, side by side where there is room for both.
#let beside(b, said) = {
  set par(leading: 0.55em, spacing: 0.75em)
  if b.share == 1 {
    align(center, picture(b.picture))
    said
  } else {
    grid(
      columns: (b.share * 100%, 1fr),
      column-gutter: 5mm,
      align: (center + horizon, left + horizon),
      picture(b.picture), dividing(narrow, said),
    )
  }
}

// Two pictures beside each other, each with its words below.
#let pair(two) = {
  set par(leading: 0.55em, spacing: 0.75em)
  grid(
    columns: (1fr, 1fr),
    column-gutter: 8mm,
    row-gutter: 3mm,
    align: (x, y) => if y == 0 { center + horizon } else { left + top },
    ..two.map(one => picture(one.picture)), ..if two.len() == 1 { ([],) },
    ..two.map(one => dividing(narrow, one.said)),
  )
}

${STEPS}
#let show-block(b) = {
  if b.is == "heading" {
    heading(level: b.level, b.text)
  } else if b.is == "paragraph" {
    par({
      if b.at("tick", default: false) { box(inset: (right: 2mm), tick) }
      if b.at("small", default: false) { text(size: 8pt, fill: quiet, b.text) } else if b.at(
        "strong",
        default: false,
      ) { strong(b.text) } else { b.text }
    })
  } else if b.is == "list" {
    if b.at("tick", default: false) {
      // What is ticked off is short.
      let half = calc.ceil(b.items.len() / 2)
      let some(items) = list(marker: tick, body-indent: 1em, ..items)
      block(breakable: false, if narrow-page { some(b.items) } else {
        grid(columns: (1fr, 1fr), column-gutter: 6mm, some(b.items.slice(0, half)), some(b.items.slice(half)))
      })
    } else { list(..b.items) }
  } else if b.is == "table" {
    tabled(b)
  } else if b.is == "figure" {
    block(above: 0.8em, below: 1em, sticky: b.at("held", default: false), align(center, picture(b.picture)))
  } else if b.is == "sheet" {
    // A bound page stays as it is: the drawing is turned on it.
    page(flipped: b.turned and not leaflet.bound, {
      let shown = (b.picture, ..if "key" in b { (b.key,) }).map(picture)
      heading(level: 1, b.heading)
      if "caption" in b { par(text(size: 8pt, fill: quiet, b.caption)) }
      if b.turned and leaflet.bound {
        v(1fr)
        align(center, rotate(-90deg, reflow: true, stack(spacing: 4mm, ..shown)))
        v(1fr)
      } else {
        for one in shown {
          v(1fr)
          align(center, one)
        }
        v(1fr)
      }
    })
  } else if b.is == "box" {
    block(
      breakable: false,
      width: 100%,
      inset: if small-page { 3mm } else { 4mm },
      radius: 1mm,
      above: 1.2em,
      below: 1.2em,
      stroke: if b.role == "caution" { 1.2pt + ink } else { (left: 2pt + tint, rest: 0.5pt + rule) },
 {
        // Cautions and contents share the first page, whatever the paper.
        set text(size: if small-page { 8pt } else { 9pt })
        set list(spacing: 0.6em)
        b.blocks.map(show-block).join()
      },
    )
  } else if b.is == "beside" {
    block(breakable: false, width: 100%, above: 1.2em, below: 1.2em, beside(b, b.blocks.map(show-block).join()))
  } else if b.is == "pairs" {
    let items = b.items.map(one => (..one, said: one.blocks.map(show-block).join()))
    for two in items.chunks(2) { block(breakable: false, above: 1.2em, below: 1.2em, pair(two)) }
  } else if b.is == "steps" {
    block(above: step-gap, width: 100%, layout(size => steps-shown(b, size, show-block)))
  } else if b.is == "together" {
    block(above: step-gap, width: 100%, layout(size => whole(b.blocks.map(show-block).join(), size)))
  } else if b.is == "contents" {
    heading(level: 1, outlined: false, b.heading)
    let list = outline(title: none, depth: 2)
    // In two columns of one height, where they are wide enough; half a line more, as their number may be odd.
    layout(size => if size.width < 110mm { list } else {
      block(
        breakable: false,
        height: measure(width: (size.width - 8mm) / 2, list).height / 2 + 0.7em,
        columns(2, gutter: 8mm, list),
      )
    })
  } else if b.is == "lines" {
    let ruled(count) = for i in range(count) {
      place(top + left, dy: (i + 1) * 9mm, line(length: 100%, stroke: 0.4pt + rule))
    }
    let foot = if "closing" in b { block(above: 4mm, below: 0mm, b.closing) }
    layout(size => {
      let room = if foot == none { 0mm } else { measure(width: size.width, foot).height + 4mm }
      // Where so many have no room with the words at their foot, all stand on the next page with their heading.
      block(breakable: false, height: 45mm + room, width: 100%, above: 0mm, below: 0mm, ruled(5))
      v(-room)
    })
    // What is left of the page.
    block(above: 0mm, below: 0mm, height: 1fr, width: 100%, layout(size => {
      ruled(calc.max(0, calc.floor(size.height / 9mm) - 1))
    }))
    foot
  }
}

// ── Head of the first page
#{
  if sender != none {
    grid(
      columns: (1fr, auto),
      align: (left + horizon, right + horizon),
      {
        text(weight: "bold", size: 10pt, sender.name)
        if "address" in sender {
          linebreak()
          text(size: 8pt, fill: quiet, lined(sender.address))
        }
      },
      if "logo" in sender { picture(sender.logo) },
    )
    line(length: 100%, stroke: 0.4pt + rule)
    v(4mm)
  }
  text(size: 9pt, weight: "bold", fill: quiet, leaflet.kind)
  v(-0.4em)
  title(text(size: if small-page { 17pt } else { 22pt }, fill: tint, dividing(24, leaflet.heading)))
  for one in leaflet.lines { par(one) }
  block(height: 1fr, width: 100%, above: 4mm, below: 0mm, layout(size => {
    let p = leaflet.cover
    let scale = calc.min(1, size.width / mm(p.width), (size.height - 6mm) / mm(p.height))
    if mm(p.height) * scale >= 25mm {
      align(center + horizon, picture((..p, width: p.width * scale, height: p.height * scale)))
    }
  }))
}
#for b in leaflet.blocks { show-block(b) }
`;
