// The part of the Typst source that sets the wall chart: as few pages as the steps need, and these filled. Two columns, and
// so the larger pictures, where they take no more pages than three; then the largest words that take no more either; then
// rows shared out evenly, and as high as their page lets them be.
export const CHART = `
#let chart-gap = 6pt

// To be measured, it has a gap as high as its picture: drawings take their time.
#let chart-cell(cell, scale, gap) = {
  set par(spacing: 0.45em)
  grid(columns: (auto, 1fr), column-gutter: 5pt, align: horizon, number(cell.number, scale: 1.35), text(size: 1em * calc.min(scale, 1.2), strong(cell.who)))
  v(-2pt)
  if gap == none { image(bytes(cell.picture.svg), format: "svg", width: 100%, alt: cell.picture.alt) } else { block(height: gap) }
  v(-2pt)
  par(text(size: 10pt * scale, weight: 500, cell.sentence))
  if cell.note != none { par(text(size: 8.5pt * scale, style: "italic", cell.note)) }
  if cell.hold != none { hold-box(text(size: 8.5pt * calc.min(scale, 1.2), cell.hold)) }
}

// The boxes of a row are as high as the highest, or as they are told.
#let chart-row(row, columns, scale, height: auto, gap: none) = grid(
  columns: (1fr,) * columns, rows: (height,), column-gutter: 6pt, inset: 5pt, align: top,
  ..row.map(cell => grid.cell(stroke: 0.8pt, chart-cell(cell, scale, gap))),
)

#let used(heights) = heights.sum() + chart-gap * heights.len()

// How many pages it takes at the least.
#let page-count(heights, room-of) = {
  let (pages, from) = (1, 0)
  for end in range(1, heights.len() + 1) {
    if end - from > 1 and used(heights.slice(from, end)) > room-of(pages - 1) {
      pages += 1
      from = end - 1
    }
  }
  pages
}

// Where each page ends, on no more pages than it takes, with as little room left as evenly as can be: of all ways to get so
// far, the best one to each end is kept. The last thing is no row, and stands with one if it can.
#let page-ends(heights, room-of) = {
  let all = heights.len()
  let ways = ("0": (cost: 0, ends: ()))
  for page in range(page-count(heights, room-of)) {
    let next = (:)
    for (key, way) in ways {
      let from = int(key)
      for end in range(from + 1, all + 1) {
        let left = room-of(page) - used(heights.slice(from, end))
        if left < 0pt and end > from + 1 { break }
        let lone = if from == all - 1 { 1e9 } else { 0 }
        let cost = way.cost + calc.pow(left / 1pt, 2) + lone
        let before = next.at(str(end), default: none)
        if before == none or cost < before.cost { next.insert(str(end), (cost: cost, ends: (..way.ends, end))) }
      }
    }
    ways = next
  }
  ways.at(str(all)).ends
}

#let chart-scales = (1.5, 1.35, 1.2, 1.1, 1)
// Room is left at the foot rather than a box drawn out to more than this much of its height.
#let chart-most = 1.3

// What follows the steps stands below the last of them, so it is counted in.
#let chart(cells, rest) = context {
  let width = page.width - 28mm
  let room = page.height - page-top - 19mm - 2pt
  let left = page.height - 19mm - here().position().y - 16pt
  let tail = measure(width: width, rest).height + 14pt
  let shape = measure(image(bytes(cells.first().picture.svg), format: "svg", width: 100pt, alt: "-")).height / 100pt
  let heights-of(columns, scale) = {
    let gap = shape * ((width - 6pt * (columns - 1)) / columns - 10pt)
    (..cells.chunks(columns).map(row => measure(width: width, chart-row(row, columns, scale, gap: gap)).height), tail)
  }
  // Where not even the first row fits below the head, it takes the heading with it.
  let rooms(heights) = page => if page > 0 { room } else if heights.first() > left { room - 16mm } else { left }
  let count(heights) = page-count(heights, rooms(heights))
  let plain = heights-of(3, 1)
  if plain.any(height => height > 0.9 * room) {
    // A note as long as a page: rows follow one another, and break where they must.
    for row in cells.chunks(3) { whole(below: chart-gap, chart-row(row, 3, 1)) }
  } else {
    let needed = count(plain)
    let fits(columns, scale) = {
      let heights = heights-of(columns, scale)
      heights.all(height => height <= 0.9 * room) and count(heights) <= needed
    }
    let columns = if fits(2, 1) { 2 } else { 3 }
    let scale = chart-scales.find(scale => scale == 1 or fits(columns, scale))
    let heights = heights-of(columns, scale)
    let room-of = rooms(heights)
    let rows = cells.chunks(columns)
    // Without what follows the rows, which comes by itself.
    let ends = page-ends(heights, room-of).map(end => calc.min(end, rows.len())).dedup()
    for (at, end) in ends.enumerate() {
      let from = if at == 0 { 0 } else { ends.at(at - 1) }
      let below = if end == rows.len() { tail } else { 0pt }
      let stretch = calc.clamp((room-of(at) - below) / used(heights.slice(from, end)), 1, chart-most)
      for index in range(from, end) {
        block(
          above: chart-gap, below: chart-gap, width: 100%, breakable: false,
          chart-row(rows.at(index), columns, scale, height: heights.at(index) * stretch),
        )
      }
      if end < rows.len() { colbreak() }
    }
  }
}
`;
