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

/** What makes the spark. */

const coil: Picture = {
  title: 'An ignition coil on its core, with two terminals, a lead and the cap at its end',
  strokes: [
    outline(block(18, 12, 36, 66, 2)),
    detail('M23 12V78M49 12V78'),
    `<path fill="var(--paper, #fff)" stroke-width="2.4" d="${block(10, 24, 52, 42, 8)}"/>`,
    solid(block(10, 24, 52, 42, 8)),
    detail('M20 33H52M20 57H52'),
    solid(block(62, 38, 9, 14, 2)),
    outline('M10 36H3M10 54H3'),
    `<path fill="none" stroke-width="6" d="M71 45C84 45 82 20 98 20"/>`,
    solid('M96 13H108Q114 13 114 21V52H102V28H96z'),
    detail('M102 36H114M102 42H114', 'M104 52V58H112V52'),
  ],
}

const plug: Picture = {
  title: 'A spark plug with its terminal, insulator, hexagon, thread and electrodes',
  strokes: [
    solid(block(4, 40, 10, 10, 2)),
    outline(
      'M14 39H22L24 36H28L30 39H34L36 36H40L42 36H50V54H42L40 54H36L34 51H30L28 54H24L22 51H14z',
    ),
    solid(block(50, 27, 16, 36, 2)),
    detail('M50 39H66M50 51H66'),
    outline(block(66, 31, 6, 28, 2)),
    solid(block(72, 34, 26, 22)),
    detail(rows(6, (i) => `M${74 + 4 * i} 56L${77 + 4 * i} 34`)),
    filled(block(98, 43, 6, 4)),
    outline('M98 36H109Q112 36 112 39V49'),
  ],
}

const igniter: Picture = {
  title: 'A sealed igniter box on two ears, its wires ending in a connector',
  strokes: [
    outline(block(4, 38, 10, 18, 4), block(70, 38, 10, 18, 4), ring(9, 47, 2), ring(75, 47, 2)),
    solid(block(14, 20, 56, 54, 5)),
    detail(block(20, 26, 44, 42, 3)),
    wire('M58 74C58 84 78 86 84 76S92 58 98 56', 'M50 74C50 90 82 92 90 78S94 64 98 62'),
    wire('M66 74C66 80 76 80 79 72S88 52 98 50'),
    outline(block(98, 44, 16, 24, 2)),
    detail('M104 50H114M104 56H114M104 62H114'),
  ],
}

const module: Picture = {
  title:
    'An ignition module on two legs over the rim of the flywheel, with a magnet in the rim, a lead and one wire',
  strokes: [
    outline('M2 88A96 96 0 0 1 118 88'),
    solid(rimPiece([60, 164.5], [85, 96], -12, 12)),
    solid('M30 30H44V62L30 65z', 'M76 30H90V65L76 62z'),
    `<path fill="var(--paper, #fff)" stroke-width="2.4" d="${block(24, 14, 72, 30, 6)}"/>`,
    solid(block(24, 14, 72, 30, 6)),
    detail('M34 22H86M34 36H86', ring(37, 52, 2.4), ring(83, 52, 2.4)),
    `<path fill="none" stroke-width="6" d="M96 24C106 24 106 10 118 8"/>`,
    outline('M24 28H16V22H10V34H16V28'),
    wire('M10 28C4 28 4 40 2 46'),
  ],
}

const points: Picture = {
  title: 'Points with their two contacts, opened by a cam, and the condenser that is wired to them',
  strokes: [
    solid('M22 30A18 18 0 1 0 38 44L40 30z'),
    outline(ring(22, 48, 5)),
    outline('M41 26L104 14V22L46 34z'),
    outline(ring(102, 18, 6)),
    solid('M38 26H47V36H40z'),
    filled(block(68, 28, 9, 5), block(68, 37, 9, 5)),
    solid('M64 42H82V50H100V58H64z'),
    detail(ring(92, 54, 2)),
    outline(block(58, 66, 40, 18, 5)),
    detail('M64 66V84M92 66V84'),
    wire('M98 75C116 75 116 40 108 22'),
  ],
}

export const sparkPictures = { coil, plug, igniter, module, points }
