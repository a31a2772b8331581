import { block, detail, filled, outline, type Picture, ring, rows, solid, wire } from './strokes.ts'

/** What is fed besides the spark. */

const regulator: Picture = {
  title: 'A regulator with cooling fins on a base with two holes, and its wires',
  strokes: [
    solid(block(4, 58, 96, 14, 3)),
    detail(ring(11, 65, 3), ring(93, 65, 3)),
    outline(rows(8, (i) => block(20 + 8.5 * i, 22, 4, 36, 1))),
    detail('M20 50H84'),
    wire(
      'M100 61C108 61 106 48 116 46',
      'M100 65C110 65 108 58 116 57',
      'M100 69C110 69 110 70 116 70',
    ),
  ],
}

const battery: Picture = {
  title: 'A battery with its two terminals, plus and minus',
  strokes: [
    solid(block(14, 32, 92, 50, 4)),
    detail('M14 44H106'),
    outline(block(24, 22, 16, 10, 1), block(80, 22, 16, 10, 1)),
    filled(block(29, 16, 6, 6), block(85, 16, 6, 6)),
    outline('M26 60H38M32 54V66', 'M82 60H94'),
    detail('M46 54V74M53 54V74M60 54V74M67 54V74M74 54V74'),
  ],
}

const lamp: Picture = {
  title: 'A lamp: glass bulb, filament and base with a contact',
  strokes: [
    outline('M72 34C64 28 62 18 46 18A26 26 0 1 0 46 70C62 70 64 60 72 54'),
    detail('M84 40L38 36M84 48L38 52'),
    outline(`M38 36${rows(4, () => 'q-6 2 0 4')}`),
    solid(block(72, 30, 28, 28, 2)),
    filled(block(80, 25, 6, 5)),
    detail('M78 30V58M94 30V58'),
    filled('M100 38H106Q110 44 106 50H100z'),
  ],
}

const fuse: Picture = {
  title: 'A blade fuse with its strip in a window',
  strokes: [
    solid('M26 14H94L90 44H30z'),
    outline(block(36, 44, 15, 36), block(69, 44, 15, 36)),
    `<path fill="var(--paper, #fff)" stroke-width="1.2" d="${block(38, 20, 44, 18, 3)}"/>`,
    outline('M43 38V30C43 20 57 24 60 29S77 38 77 28V38'),
    detail('M41 76H46M74 76H79'),
  ],
}

export const feedingPictures = { regulator, battery, lamp, fuse }
