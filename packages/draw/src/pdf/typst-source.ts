/**
 * The program that sets the sheets. It is the same for every document: all that differs comes in as JSON, so that no
 * text of a user is ever read as markup. Everything stands where the scene has it; what the structure adds is only what
 * a reader hears. A table's columns are 0 wide, so that every cell measures from the same corner as the sheet does.
 */
export const typstSource = `
#let data = json(bytes(sys.inputs.data))
#set document(title: data.title, description: data.description, date: none)
#set page(margin: 0pt)
#set par(leading: 0pt, spacing: 0pt, justify: false)
#set text(font: "IBM Plex Sans", lang: data.language, hyphenate: false, top-edge: "baseline", bottom-edge: "baseline")
#set table(inset: 0pt, stroke: none, align: top + left)
#show heading: it => it.body
#show figure: it => it.body
#set figure(numbering: none, gap: 0pt, outlined: false)

#let far = 4000pt
#let at(point) = (point.at(0) * 1pt, point.at(1) * 1pt)
#let steps(list) = list.map(s => {
  if s.kind == "move" { curve.move(at(s.to)) }
  else if s.kind == "line" { curve.line(at(s.to)) }
  else if s.kind == "cubic" { curve.cubic(at(s.first), at(s.second), at(s.to)) }
  else { curve.close(mode: "straight") }
})
#let pen(p) = if p == none { none } else {
  (paint: rgb(p.colour), thickness: p.width * 1pt, join: "round",
    dash: if p.dash == none { none } else { p.dash.map(v => v * 1pt) })
}
#let tile(p) = tiling(size: (p.width * 1pt, p.height * 1pt), relative: "parent", {
  for m in p.marks {
    place(top + left, if m.line == 0 { curve(fill: rgb(p.ink), stroke: none, ..steps(m.steps)) }
      else { curve(stroke: (paint: rgb(p.ink), thickness: m.line * 1pt), ..steps(m.steps)) })
  }
})
#let tiles = data.patterns.pairs().map(((name, p)) => (name, tile(p))).to-dict()

#let shape(n) = {
  let path = steps(n.steps)
  if n.fill == none { place(top + left, curve(stroke: pen(n.pen), ..path)) }
  else if n.fill.pattern == none { place(top + left, curve(fill: rgb(n.fill.colour), stroke: pen(n.pen), ..path)) }
  else {
    place(top + left, curve(fill: rgb(n.fill.colour), stroke: none, ..path))
    place(top + left, curve(fill: tiles.at(n.fill.pattern), stroke: pen(n.pen), ..path))
  }
}
#let words(n) = {
  let body = text(size: n.size * 1pt, weight: n.weight, fill: rgb(n.colour),
    style: if n.italic { "italic" } else { "normal" }, n.text)
  let back = if n.align == "start" { 0pt } else if n.align == "end" { far } else { far / 2 }
  let side = if n.align == "start" { left } else if n.align == "end" { right } else { center }
  place(top + left, dx: n.x * 1pt - back, dy: n.y * 1pt, box(width: far, align(side, body)))
}
#let draw(list) = for n in list {
  if n.kind == "shape" { shape(n) }
  else if n.kind == "text" { words(n) }
  else if n.kind == "drawing" { place(top + left, pdf.artifact(draw(n.nodes))) }
  else if n.kind == "figure" { place(top + left, figure(alt: n.label, draw(n.nodes))) }
  else if n.kind == "heading" { place(top + left, heading(level: n.level, outlined: false, draw(n.nodes))) }
  else if n.kind == "table" {
    place(top + left, table(columns: (0pt,) * n.columns, rows: 0pt,
      ..if n.head.len() > 0 { (table.header(..n.head.map(draw)),) },
      ..n.rows.sum(default: ()).map(draw)))
  }
  else if n.nodes.all(m => m.kind == "text") {
    place(top + left, block(width: far, par(n.nodes.map(m => box(width: 0pt, height: 0pt, words(m))).join())))
  }
  else { place(top + left, block(draw(n.nodes))) }
}
#for sheet in data.pages {
  page(width: sheet.width * 1pt, height: sheet.height * 1pt, draw(sheet.nodes))
}
`;
