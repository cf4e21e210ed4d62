/** How is the book set? Typst source; every text comes in as data (`sys.inputs.book`) and is never read as source. */
export const BOOK_TEMPLATE = `
// Where a long word may break stands a mark; an empty box does the same and leaves nothing in the text.
#let soften(v) = if type(v) == str {
  if v.contains("\\u{200b}") { v.split("\\u{200b}").join(box(width: 0pt)) } else { v }
} else if type(v) == array { v.map(soften) } else if type(v) == dictionary {
  v.pairs().map(((key, inner)) => ((key): soften(inner))).join()
} else { v }
#let d = soften(json(bytes(sys.inputs.book)))
#let lett(size, weight: 700, body) = text(font: "Coldset Letter", weight: weight, size: size, body)
#let left-edge = 14mm
#let frame-width = 188mm
#let rails = (safety: 3.2mm, money: 1.6mm, time: 0.7mm)
#let stakes = (safety: "Somebody could be hurt", money: "Money could be lost", time: "Weeks could be lost")

#let title-block(n, total) = block(width: frame-width, stroke: (top: 0.7mm), inset: 0pt, {
  set text(font: "Coldset Read", size: 8.5pt)
  set par(leading: 0.42em, spacing: 0.5em)
  grid(
    columns: (1fr, 42mm, 26mm, 34mm),
    inset: (x: 3mm, y: 2mm),
    align: left + top,
    stroke: (x, y) => if x > 0 { (left: 0.25mm) },
    d.standing,
    { [job]; parbreak(); lett(11pt, d.job) },
    { [sheet]; parbreak(); lett(11pt)[#n of #total] },
    { [revision]; parbreak(); lett(11pt, d.revision) },
  )
})

#let verdict(word, about) = {
  let mark = if word in d.marks { box(baseline: 15%, image(bytes(d.marks.at(word)), format: "svg", height: 3.8mm)); h(1.6mm) }
  let plain = { mark; lett(10.5pt, word) }
  let shape = if word in ("will not fit", "over") {
    box(fill: black, baseline: 1.5mm, inset: (x: 2.4mm, y: 1.5mm), text(fill: white, plain))
  } else if word in ("measure first", "not checked yet") {
    box(stroke: (paint: black, thickness: 0.35mm, dash: (1.2mm, 0.8mm)), baseline: 1.4mm, inset: (x: 2.2mm, y: 1.4mm), plain)
  } else if word == "fits with work" {
    box(stroke: (bottom: 0.5mm), baseline: 1.2mm, inset: (x: 0mm, y: 1.2mm), plain)
  } else if word == "refuse" {
    context {
      let inner = lett(10.5pt, text(fill: white)[REFUSE])
      let m = measure(inner)
      let w = m.width + 7mm
      let h = m.height + 3.4mm
      let c = 1.6mm
      box(width: w, height: h, baseline: 30%, {
        place(polygon(fill: black, (c, 0mm), (w - c, 0mm), (w, c), (w, h - c), (w - c, h), (c, h), (0mm, h - c), (0mm, c)))
        place(center + horizon, inner)
      })
    }
  } else if word == "gate" {
    box(stroke: (left: 1mm, right: 1mm), baseline: 1.4mm, inset: (x: 3mm, y: 1.4mm), lett(10.5pt)[GATE])
  } else if word == "flag" {
    context {
      let inner = lett(10.5pt)[FLAG]
      let m = measure(inner)
      let w = m.width + 9mm
      let h = m.height + 3mm
      box(width: w, height: h, baseline: 30%, {
        place(polygon(stroke: 0.35mm, (0mm, 0mm), (w, 0mm), (w - 2.4mm, h / 2), (w, h), (0mm, h)))
        place(left + horizon, dx: 2.6mm, inner)
      })
    }
  } else { plain }
  shape
  if about != "" { h(2mm); text(size: 10pt, about) }
}

#let key-number(q, size: 16pt) = {
  lett(size, q.figure)
  if q.unit != "" { h(1mm); text(size: 10pt, q.unit) }
  h(1.2mm)
  text(size: 10pt, q.band)
}

#let picture(p) = image(bytes(p.svg), format: "svg", width: p.widthMm * 1mm, alt: p.label)

#let open-row(row) = grid(
  columns: (9mm, 1fr, 42mm), column-gutter: 3mm,
  lett(15pt, weight: 500, row.number),
  {
    set par(spacing: 1.6mm)
    block(text(size: 10pt, row.question), below: 2mm)
    block({ set par(leading: 0.42em); lett(14pt, row.answer) }, above: 2mm, below: 2.4mm)
    if row.detail != "" { block({ set par(leading: 0.42em); text(size: 10pt, row.detail) }, below: 2mm) }
    block(verdict(row.verdict, row.about), above: 2mm, below: 2mm)
    if row.next != "" { block({ lett(10.5pt)[Next: ]; text(size: 10.5pt, underline(offset: 1mm, stroke: 0.5mm, row.next)) }, above: 2.2mm) }
  },
  {
    set par(spacing: 1.6mm)
    if row.key != none { block(key-number(row.key), below: 1.6mm) }
    if row.drawing != none { block(picture(row.drawing), above: 1mm, below: 1.6mm) }
    if row.keyNote != "" { block(text(size: 10pt, row.keyNote)) }
  },
)

#let settled-row(row) = {
  set par(leading: 0.42em)
  if row.verdict == "not checked yet" {
    grid(columns: (9mm, 1fr), column-gutter: 3mm, lett(11pt, weight: 500, row.number),
      { text(size: 10pt, row.question); h(2mm); lett(10.5pt, weight: 500)[Not checked yet. ]; text(size: 10pt, row.answer) })
  } else {
    grid(columns: (9mm, 1fr, 32mm, 41mm), column-gutter: 3mm,
      lett(11pt, weight: 500, row.number),
      { text(size: 10pt, row.question); linebreak(); lett(11pt, row.answer)
        if row.about != "" { linebreak(); text(size: 10pt, row.about) }
        if row.next != "" { linebreak(); text(size: 10pt)[Next: #row.next] } },
      if row.key != none { key-number(row.key, size: 11pt) },
      verdict(row.verdict, ""))
  }
}

#let board(b) = {
  heading(level: 2, stakes.at(b.stake))
  for (i, row) in b.rows.enumerate() {
    block(breakable: row.long, width: 100%, above: 0mm, below: 0mm, sticky: i == 0 and b.rows.len() > 1 and not row.open,
      stroke: (left: rails.at(b.stake)), inset: (left: 4mm + rails.at(b.stake) / 2, right: 0mm, y: 0mm),
      outset: (left: -rails.at(b.stake) / 2, bottom: if i + 1 < b.rows.len() { 0.1mm } else { 0mm }),
      { if i > 0 { line(length: 100%, stroke: 0.18mm) ; v(-1mm) }
        block(inset: (y: if row.open { 1.9mm } else { 1.5mm }), width: 100%, if row.open { open-row(row) } else { settled-row(row) }) })
  }
  v(3mm)
}

#let hatched = tiling(size: (3.8mm, 3.8mm), relative: "parent", {
  for k in (-1, 0, 1) { place(top + left, dx: k * 3.8mm, line(start: (-1.9mm, 5.7mm), end: (5.7mm, -1.9mm), stroke: 1.2mm)) }
})

#let cautions(items) = block(width: 100%, above: 3.5mm, below: 3.5mm, grid(
  columns: (7mm, 1fr), stroke: none,
  grid.hline(stroke: 0.7mm),
  ..items.enumerate().map(((i, c)) => (
    grid.cell(fill: hatched, breakable: c.long, stroke: (left: 0.7mm, right: 0.7mm))[],
    grid.cell(inset: (x: 3mm, top: if i == 0 { 2.4mm } else { 1mm }, bottom: if i == items.len() - 1 { 2.4mm } else { 1mm }),
      stroke: (right: 0.7mm), breakable: c.long, { if c.first != "" { lett(10.5pt, c.first); [ ] }; c.text }),
  )).flatten(),
  grid.hline(stroke: 0.7mm),
))

#let signatures(lines) = block(width: 100%, above: 4mm, below: 4mm, breakable: lines.len() > 20,
  stroke: (left: 2.6mm, right: 2.6mm), inset: (x: 5mm, y: 1mm), outset: (x: -1.3mm), {
    let wide = if lines.len() in (5, 6) { 3 } else { 4 }
    for four in lines.chunks(wide) {
      grid(columns: (1fr,) * calc.min(wide, calc.max(1, lines.len())), column-gutter: 4mm,
        ..four.map(l => block(width: 100%, above: 0mm, below: 0mm, stroke: (bottom: 0.35mm), inset: (bottom: 1mm),
          { box(height: 8mm, width: 0mm); lett(10.5pt, weight: 500, l.signed) })),
        ..range(four.len(), if lines.len() > wide { wide } else { four.len() }).map(_ => []),
        ..four.map(l => block(inset: (top: 1.2mm, bottom: 1.5mm), text(size: 10pt, l.label))))
    }
  })

#let figures(figs) = block(width: 100%, above: 4mm, below: 4mm, breakable: figs.len() > 25, {
  let n = calc.min(5, figs.len())
  grid(columns: (1fr,) * n, inset: (x: 2.5mm, y: 1.5mm),
    stroke: (x, y) => (top: 0.35mm, bottom: 0.35mm, left: if x > 0 { 0.25mm } else { 0mm }),
    ..figs.map(f => { set par(spacing: 1.4mm, leading: 0.4em); text(size: 10pt, f.label); parbreak(); lett(15pt, f.figure); h(1mm); text(size: 10pt, f.unit); parbreak(); text(size: 10pt, f.band) }))
})

#let data-table(t) = {
  if t.caption != "" { block(sticky: true, above: 4mm, below: 1.6mm, lett(11pt, t.caption)) }
  set text(size: 10pt)
  set par(leading: 0.42em)
  show table.cell.where(y: 0): set text(font: "Coldset Letter", weight: 700)
  // A short table stays on one sheet.
  let whole = t.rows.len() <= 4 and t.rows.all(r => not r.long)
  block(breakable: not whole, width: 100%, above: 1.6mm, below: 2.6mm, table(
    columns: t.columns.map(c => c.share * 1fr),
    align: (x, y) => if t.columns.at(x).align == "right" { right } else { left },
    inset: (x: 1.6mm, y: 1.2mm),
    stroke: (x, y) => (top: if y == 0 { 0.5mm } else if y == 1 { 0.35mm } else { 0.18mm }, bottom: 0.18mm),
    table.header(repeat: true, ..t.columns.map(c => c.head)),
    ..t.rows.map(r => r.cells.map(c => table.cell(breakable: r.long, c))).flatten(),
  ))
}

#let joint-line(j) = block(width: 100%, above: 0mm, below: 0mm, stroke: (top: 0.18mm), inset: (y: 1.5mm), breakable: false, {
  set text(size: 10pt)
  set par(leading: 0.42em)
  grid(columns: (9mm, 1fr, 54mm), column-gutter: 3mm,
    lett(10.5pt, weight: 500, j.id),
    { lett(10.5pt, j.title); [ ]; lett(10.5pt, weight: 500, j.verdict); [. ]; j.reason },
    j.number)
})

#let joint-large(j) = block(width: 100%, above: 0mm, below: 0mm, stroke: (top: 0.35mm), inset: (top: 2.4mm, bottom: 3mm), {
  set text(size: 10pt)
  set par(leading: 0.45em, spacing: 1.6mm)
  block(sticky: true, below: 1.6mm, grid(columns: (9mm, 1fr, auto), column-gutter: 3mm, align: (left, left, right),
    lett(13pt, weight: 500, j.id), lett(13pt, j.title), verdict(j.verdict, "")))
  pad(left: 12mm, {
    block(sticky: true, below: 2mm, lett(11.5pt, weight: 500, j.reason))
    if j.numbers.len() > 0 {
      block(below: 2.4mm, grid(columns: (1fr, 40mm, 56mm), column-gutter: 3mm, inset: (top: 1.1mm, bottom: 0.9mm),
        stroke: (x, y) => (bottom: 0.12mm),
        ..j.numbers.map(n => (n.at(0), lett(10.5pt, n.at(1)), n.at(2))).flatten()))
    }
    if j.cautions.len() > 0 { cautions(j.cautions) }
    if j.next != "" { block(above: 2.4mm, below: 2.2mm, { lett(10.5pt)[Next: ]; underline(offset: 1mm, stroke: 0.5mm, j.next) }) }
    if j.ways.len() > 0 {
      block(sticky: true, above: 3.4mm, below: 1.8mm, lett(10.5pt)[Ways to make it fit])
      for w in j.ways {
        block(breakable: false, above: 1.8mm, below: 1.8mm, grid(columns: (4mm, 1fr), column-gutter: 1mm,
          box(width: 3mm, height: 3mm, stroke: 0.35mm, fill: if w.taken { black } else { white }),
          { lett(10.5pt, w.what); if w.taken { [ (reckoned with)] }; linebreak(); w.facts }))
      }
    }
  })
})

#let joints(list) = { for j in list { if j.line { joint-line(j) } else { joint-large(j) } }; v(1mm) }

#let plate(words) = block(width: 100%, breakable: false, above: 4mm, below: 4mm, fill: black, inset: 4mm, text(fill: white, lett(12pt, words)))

#let drawing(b) = block(breakable: false, width: 100%, above: 4mm, below: 4mm, {
  align(center, picture(b))
  if b.template { v(3mm); scale-bar }
  if b.caption != "" { v(0.5mm); text(size: 10pt, b.caption) }
})

#let show-block(b) = {
  if b.kind == "heading" { heading(level: 2, b.text) }
  else if b.kind == "paragraph" { par({ if b.first != "" { lett(10.5pt, b.first); [ ] }; b.text }) }
  else if b.kind == "list" {
    if b.close { set text(size: 10pt); set par(leading: 0.42em); let entries = list(marker: [–], spacing: 1.1mm, ..b.items.map(i => [#i]))
      if b.inTwo { columns(2, gutter: 6mm, entries) } else { entries } }
    else { list(marker: [–], ..b.items.map(i => [#i])) }
  }
  else if b.kind == "joints" { joints(b.joints) }
  else if b.kind == "board" { board(b) }
  else if b.kind == "figures" { figures(b.figures) }
  else if b.kind == "table" { data-table(b) }
  else if b.kind == "drawing" { drawing(b) }
  else if b.kind == "plate" { plate(b.text) }
  else if b.kind == "cautions" { cautions(b.items) }
  else if b.kind == "signatures" { signatures(b.lines) }
}

#set document(title: d.title, date: none)
#set text(font: "Coldset Read", size: 10.5pt, fallback: false, lang: "en", hyphenate: false)
#set par(leading: 0.5em, spacing: 2.6mm, justify: false)
#set list(indent: 0mm, body-indent: 2mm, spacing: 1.6mm)

#context {
  let foot = measure(title-block(888, 888)).height
  set page(
    paper: "a4",
    margin: (left: left-edge + 5mm, right: 8mm + 5mm, top: 8mm + 6mm, bottom: 8mm + foot + 4mm),
    background: {
      place(top + left, dx: left-edge, dy: 8mm, rect(width: frame-width, height: 281mm, stroke: 0.7mm))
      place(bottom + left, dx: left-edge, dy: -8mm, context title-block(counter(page).get().first(), counter(page).final().first()))
    },
  )
  show heading: set text(font: "Coldset Letter", weight: 700)
  show heading: set block(sticky: true)
  show heading.where(level: 1): it => block(above: 6mm, below: 3mm, sticky: true, width: 100%, { set par(leading: 0.35em); text(size: 18pt, it.body) })
  show heading.where(level: 2): it => block(above: 5mm, below: 2.2mm, sticky: true, width: 100%, stroke: (bottom: 0.35mm), inset: (bottom: 1.2mm), text(size: 13pt, it.body))

  block(below: 3mm, { set par(leading: 0.35em); lett(22pt, d.title) })
  if d.subtitle != "" { block(below: 3mm, text(size: 11pt, d.subtitle)) }
  for s in d.sections {
    if s.newSheet { pagebreak(weak: true) }
    if s.stamp == none { heading(level: 1, s.title) } else {
      block(sticky: true, above: 5mm, below: 2.4mm, grid(columns: (1fr, auto), column-gutter: 5mm, heading(level: 1, s.title),
        block(stroke: (left: 2.6mm, right: 2.6mm), inset: (x: 6mm, y: 2mm), outset: (x: -1.3mm), align(center, {
          set par(spacing: 1.2mm)
          lett(15pt, s.stamp.word); parbreak(); lett(10pt, weight: 500, s.stamp.why) }))))
    }
    if s.lead != "" { block(sticky: true, below: 3mm, text(size: 10.5pt, s.lead)) }
    for b in s.blocks { show-block(b) }
  }
  if d.codes != "" {
    block(breakable: false, above: 6mm, { lett(10.5pt)[Signs not printed. ]; [The letters of this book have no shape for these; they stand as their code: #d.codes.] })
  }
}
`;
