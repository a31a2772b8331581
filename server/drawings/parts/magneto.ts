import {
  block,
  detail,
  filled,
  outline,
  type Picture,
  rimPiece,
  ring,
  rows,
  solid,
  wire,
} from './strokes.ts'

/** What turns, and what the current is made in. */

const winding: Picture = {
  title: 'A winding of many turns round one pole of an iron core, with two wires',
  strokes: [
    solid('M26 20Q60 6 94 20V27H71V72H100V83H20V72H49V27H26z'),
    detail('M54 20V72M60 19V72M66 20V72'),
    `<path fill="none" stroke="currentColor" stroke-width="4.4" d="${rows(7, (i) => `M40 ${37 + 5 * i}L80 ${33 + 5 * i}`)}"/>`,
    wire('M80 33C96 30 104 36 114 34M80 63C94 66 104 60 114 62'),
  ],
}

const pickup: Picture = {
  title: 'A pickup on its bracket, its tip close to a lug on the rim of the flywheel',
  strokes: [
    outline('M28 4A58 58 0 0 1 28 86', 'M18 12A48 48 0 0 1 18 78'),
    solid('M44 35H52V55H44'),
    detail('M12 30A34 34 0 0 1 12 60M8 54L12 61L17 55'),
    solid(block(59, 39, 12, 12)),
    solid(block(71, 26, 26, 38, 4)),
    detail(rows(5, (i) => `M${76 + 4 * i} 31V59`)),
    outline('M76 26V12H92V26M76 64V78H92V64', ring(84, 19, 3), ring(84, 71, 3)),
    wire('M97 38C106 38 108 34 116 34M97 52C106 52 108 56 116 56'),
  ],
}

const flywheel: Picture = {
  title:
    'A flywheel from the front, with magnets in its rim, a lug outside and the groove of the key in its hub',
  strokes: [
    outline(ring(60, 46, 39), ring(60, 46, 29)),
    solid(...[20, 110, 200, 290].map((from) => rimPiece([60, 46], [29, 37], from, from + 50))),
    solid(rimPiece([60, 46], [39, 44], -12, 6)),
    outline('M57 36.5A10 10 0 1 0 63 36.5V32H57z'),
    detail(...[45, 135, 225, 315].map((angle) => hole(angle))),
  ],
}

function hole(degrees: number): string {
  const angle = (degrees * Math.PI) / 180
  return ring(Math.round(60 + 20 * Math.sin(angle)), Math.round(46 - 20 * Math.cos(angle)), 4)
}

const key: Picture = {
  title:
    'The end of a crankshaft with a key in its groove, and beside it the hub of the flywheel with its own groove',
  strokes: [
    outline('M2 38H14L42 43H54V69H42L14 74H2'),
    detail(
      'M14 38V74M42 43V69',
      rows(3, (i) => `M${45 + 3 * i} 43V69`),
    ),
    solid('M18 39A11 11 0 0 0 38 42.5V34L18 30z'),
    outline(ring(91, 56, 26)),
    solid('M88 40.3A16 16 0 1 0 94 40.3V33H88z'),
    detail('M30 27C38 8 74 4 88 20'),
    filled('M91 24L82 21L88 15z'),
  ],
}

export const magnetoPictures = { winding, pickup, flywheel, key }
