import { block, detail, filled, outline, type Picture, ring, rows, solid, wire } from './strokes.ts'

/** What stops the engine, and what wires meet in. */

const stopSwitch: Picture = {
  title: 'A stop button in its housing on a handlebar, with two wires',
  strokes: [
    outline('M4 44H36M4 60H36M84 44H100M84 60H100', 'M100 40H116V64H100z'),
    detail(rows(4, (i) => `M${103 + 4 * i} 40V64`)),
    solid(block(36, 32, 48, 40, 8)),
    solid('M46 32V26Q46 14 60 14T74 26V32z'),
    detail('M46 27H74', 'M44 44H76'),
    wire('M50 72C50 82 40 80 34 88M60 72C60 84 50 82 46 88'),
  ],
}

const tether: Picture = {
  title: 'A tether switch: a cap on a post, and a coiled cord from the cap to a hook',
  strokes: [
    solid(block(8, 54, 40, 26, 4)),
    outline(block(22, 42, 12, 12)),
    solid('M14 42V34Q14 22 28 22T42 34V42z'),
    outline(ring(47, 30, 4)),
    `<path fill="none" stroke-width="2.4" d="M51 30H54${rows(6, () => 'c0 -12 9 -12 9 0c0 10 -6 10 -5 0')}h3"/>`,
    outline('M82 30C92 30 98 36 98 44', 'M98 44V50A10 13 0 1 0 104 50V44z'),
    detail('M98 52V66'),
    wire('M18 80V88M28 80V88'),
  ],
}

const connector: Picture = {
  title: 'The two halves of a connector, pins on one side, a latch and its catch on top',
  strokes: [
    solid(block(16, 28, 30, 36, 3)),
    detail('M46 37H34M46 46H34M46 55H34'),
    outline('M20 28V20H56V26H50V24H26V28'),
    outline('M106 24H72V32H78M106 68H72V60H78M106 24V68'),
    detail('M78 32V60'),
    filled('M76 24L86 24L86 18z'),
    outline('M60 37H84M60 46H84M60 55H84'),
    solid(block(84, 30, 22, 32)),
    wire(rows(3, (i) => `M16 ${37 + 9 * i}C8 ${37 + 9 * i} 8 ${34 + 12 * i} 2 ${34 + 12 * i}`)),
    wire(
      rows(3, (i) => `M106 ${37 + 9 * i}C112 ${37 + 9 * i} 112 ${34 + 12 * i} 118 ${34 + 12 * i}`),
    ),
  ],
}

export const stoppingPictures = { 'stop-switch': stopSwitch, tether, connector }
