// The one Typst source that sets every paper: it reads the model as JSON from `sys.inputs` and knows only blocks. Black on
// white throughout. Headings, lists and tables are Typst's own, so that they are tagged as such in the PDF.
import { CHART } from './chart.ts';

export const TEMPLATE = String.raw`
#let doc = json(bytes(sys.inputs.model))
#let paper = sys.inputs.paper
#let is-card = doc.kind == "card"
#let is-chart = doc.kind == "chart"
#let size = if is-card { 9pt } else if is-chart { 9.5pt } else if doc.kind == "script" { 10.5pt } else { 9.5pt }

#set document(title: doc.document + ": " + doc.title, author: (), date: none)
#set text(font: "Noto Sans", fallback: false, size: size, lang: doc.language, hyphenate: false)
#set par(justify: false, leading: 0.5em, spacing: 0.75em)
#set list(indent: 0pt, spacing: 0.5em)
#set enum(indent: 0pt, spacing: 0.5em)

#let stamp = (..doc.stamp, ..if doc.invented == none { () } else { (doc.invented,) }).join("  ·  ")
#let page-of() = context {
  let pages = str(counter(page).final().first())
  doc.page.replace("{page}", str(here().page())).replace("{pages}", pages)
}

#let foot = {
  set text(size: 7.5pt)
  set par(spacing: 0.3em, leading: 0.4em)
  line(length: 100%, stroke: 0.6pt)
  v(2pt)
  grid(
    columns: (1fr, auto),
    column-gutter: 8pt,
    [#strong(stamp) \ #doc.defers],
    align(right)[#strong(page-of()) \ Doffline],
  )
}

#let warning-bar = block(below: 6pt, width: 100%, stroke: 1.4pt, inset: 3.5pt, align(center, text(size: 9.5pt, weight: 700, doc.warning)))

// Whole on the first sheet; above every other and on each card no more of it than leaves room for the steps.
#let running = {
  let letters = doc.title.clusters()
  if letters.len() > 400 { letters.slice(0, 400).join().trim() + " …" } else { doc.title }
}
// A long title takes more lines of the header.
#let page-top = 14mm + if doc.warning == none { 0mm } else { 8mm } + calc.ceil(running.len() / 90) * 3.2mm

#set page(
  paper: if paper == "letter" { "us-letter" } else { "a4" },
  margin: if is-card { (x: 8mm, top: 8mm, bottom: 17mm) } else { (x: 14mm, top: page-top, bottom: 19mm) },
  header-ascent: 4mm,
  header: if is-card { none } else {
    set text(size: 7.5pt)
    set par(spacing: 0.4em)
    if doc.warning != none { warning-bar }
    grid(columns: (1fr, auto), column-gutter: 8pt, running, strong(doc.document))
    line(length: 100%, stroke: 0.6pt)
  },
  footer: foot,
  footer-descent: 15%,
)

#show heading.where(level: 1): it => block(below: 0.5em, text(size: 17pt, weight: 700, it.body))
#show heading.where(level: 2): it => block(above: 1.3em, below: 0.7em, sticky: true, text(size: 12.5pt, weight: 700, it.body))
#show heading.where(level: 3): it => block(above: 1.2em, below: 0.55em, sticky: true, text(size: 10.5pt, weight: 700, it.body))
#set table(stroke: 0.5pt, inset: (x: 4pt, y: 3.5pt))
#show table.cell.where(y: 0): set text(weight: 700)

#let tick = box(width: 4.2mm, height: 4.2mm, stroke: 0.9pt, radius: 0.4pt)
#let number(n, scale: 1) = box(
  fill: black, inset: (x: 3pt * scale, y: 2pt * scale), radius: 2pt,
  text(fill: white, weight: 700, size: 1em * scale, str(n)),
)
#let hold-box(body) = block(
  width: 100%, stroke: 1.4pt, inset: 4pt, above: 0.5em, below: 0.3em,
  fill: tiling(size: (5pt, 5pt), place(line(start: (0%, 100%), end: (100%, 0%), stroke: 0.35pt + luma(190)))),
  block(fill: white, inset: 2pt, width: 100%, strong(body)),
)
// Keeps together what fits on a page, and lets break what does not: nothing may run off the paper.
#let whole(body, ..more) = layout(room => block(
  width: 100%, breakable: measure(width: room.width, body).height > 0.9 * room.height, ..more, body,
))
#let widths(shares) = shares.map(share => if share == 0 { auto } else { share * 1fr })

${CHART}
#let script-step(one) = {
  set par(spacing: 0.4em)
  strong(one.who)
  parbreak()
  for (index, line) in one.lines.enumerate() {
    par(hanging-indent: 1em, if index == 0 { text(size: 11.5pt, weight: 700, line) } else { [#h(1em)#line] })
  }
  if one.note != none { par(text(size: 9pt, style: "italic", one.note)) }
  if one.hold != none { hold-box(one.hold) }
}
#let is-long(..texts) = texts.pos().map(one => if one == none { 0 } else { one.len() }).sum() > 900


#let script(one) = {
  let kept = if one.together { whole } else { (body, ..more) => block(width: 100%, breakable: true, ..more, body) }
  kept(below: 1.2em, {
    heading(level: 2, one.heading)
    table(
      columns: (auto, 1fr, 24mm, 17mm, 15mm, 17mm),
      align: (x, y) => if x >= 3 { center + horizon } else if x == 0 { center + top } else { left + top },
      table.header(..one.head, ..one.boxes.map(label => text(size: 7.5pt, label))),
      ..one.lines.map(step => (
        text(size: 13pt, weight: 700, str(step.number)),
        table.cell(breakable: is-long(..step.lines, step.note), script-step(step)),
        step.answer,
        ..one.boxes.map(_ => tick),
      )).flatten(),
    )
  })
}

#let ticks(one) = table(
  columns: (auto, 1fr, 22mm, 17mm, 18mm),
  align: (x, y) => if x >= 2 { center + horizon } else { left + horizon },
  table.header(..one.head, ..one.boxes.map(label => text(size: 7.5pt, label))),
  ..one.rows.map(row => (
    strong(row.at(0)), table.cell(breakable: is-long(row.at(1)), row.at(1)), ..one.boxes.map(_ => tick),
  )).flatten(),
)

#let blank(label) = block(width: 100%, breakable: false, {
  text(size: 8.5pt, label)
  v(6mm)
  line(length: 100%, stroke: 0.6pt)
})
#let blanks(labels) = block(above: 1em, below: 1em, grid(
  columns: if labels.len() == 1 { (1fr,) } else { (1fr, 1fr, 1fr) },
  column-gutter: 8mm, row-gutter: 3mm,
  ..labels.map(blank),
))

#let card-line(one) = block(above: 0.75em, below: 0.75em, width: 100%, grid(
  columns: (1.9em, 1fr), column-gutter: 3pt,
  align(right, strong(str(one.number))),
  {
    if one.who != none [#strong(one.who) – ]
    one.text
    if one.hold [ #box(stroke: 0.8pt, inset: (x: 2pt), outset: (y: 1.5pt), strong(doc.holdMark))]
  },
))
#let card-head(n, all) = {
  set text(size: 7pt)
  block(below: 0.5em, width: 100%, {
    set par(spacing: 0.45em, leading: 0.4em)
    grid(columns: (1fr, auto), column-gutter: 5pt, strong(running), strong(str(n) + "/" + str(all)))
    if doc.warning != none { strong(stamp) } else { stamp }
    line(length: 100%, stroke: 0.6pt)
  })
}
#let cards(one) = layout(room => context {
  let (across, down) = (2, 2)
  let inset = 4.5mm
  let width = room.width / across
  let height = room.height / down - 0.1pt
  let inner = (width: width - 2 * inset, height: height - 2 * inset)
  let filled(items) = measure(width: inner.width, { card-head(9, 9); items.join() }).height
  let pieces = (
    ..one.lines.map(card-line),
    // The rule never stands at the end of a card by itself.
    ..one.foot.enumerate().map(((at, said)) => {
      if at == 0 { block(above: 1em, below: 0.6em, sticky: true, line(length: 100%, stroke: 0.6pt)) }
      block(above: 0.7em, below: 0.7em, width: 100%, text(size: 7.5pt, said))
    }),
  )
  let panels = ()
  let current = ()
  for piece in pieces {
    if current.len() > 0 and filled((..current, piece)) > inner.height {
      panels.push(current)
      current = ()
    }
    current.push(piece)
  }
  panels.push(current)
  for sheet in panels.enumerate().chunks(across * down) {
    grid(
      columns: (width,) * across, rows: (height,) * calc.min(down, calc.ceil(sheet.len() / across)),
      stroke: (paint: black, thickness: 0.5pt, dash: "dashed"),
      ..sheet.map(((n, items)) => block(inset: inset, width: width, { card-head(n + 1, panels.len()); items.join() })),
    )
  }
})

#let titled-list(one) = {
  if one.title != none { block(above: 0.7em, below: 0.5em, sticky: true, strong(one.title)) }
  let items = if one.numbered { enum(..one.items) } else { list(..one.items) }
  // Under a heading of its own: its last point alone on a page is overlooked.
  if one.title == none { whole(items) } else { items }
}

#let shown(one) = {
  if one.is == "heading" { heading(level: one.level, one.text) }
  else if one.is == "text" {
    if one.tone == "boxed" { block(width: 100%, stroke: 1.2pt, inset: 6pt, strong(one.text)) }
    else if one.tone == "strong" { par(strong(one.text)) }
    else if one.tone == "lead" { block(sticky: true, par(one.text)) }
    else if one.tone == "small" { par(text(size: 8.5pt, one.text)) }
    else { par(one.text) }
  }
  else if one.is == "list" { titled-list(one) }
  else if one.is == "facts" { for (label, value) in one.facts { par(hanging-indent: 1em, [#strong(label) – #value]) } }
  else if one.is == "table" {
    set text(size: 8.5pt)
    table(columns: widths(one.widths), table.header(..one.head), ..one.rows.flatten().map(cell => table.cell(breakable: is-long(cell), cell)))
  }
  else if one.is == "script" { script(one) }
  else if one.is == "cards" { cards(one) }
  else if one.is == "ticks" { ticks(one) }
  else if one.is == "choices" { for item in one.items { block(above: 0.9em, grid(columns: (auto, 1fr), column-gutter: 6pt, align: horizon, tick, item)) } }
  else if one.is == "blanks" { blanks(one.labels) }
  else { panic("no such block: " + one.is) }
}

#if not is-card {
  heading(level: 1, doc.document)
  block(above: 0.4em, below: 0.5em, text(size: 12pt, weight: 500, doc.title))
  block(below: 1em, strong(stamp))
}
#for (at, one) in doc.blocks.enumerate() {
  if one.is == "chart" { chart(one.cells, doc.blocks.slice(at + 1).map(shown).join()) } else { shown(one) }
}
`;
