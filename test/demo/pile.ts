import type { Fields } from '../help/walker.ts'

/** An invented pile: the closet of a lighthouse keeper's family. Nothing in it is anybody's. */
export interface DemoGarment {
  readonly name: string
  /** By question; a question that is asked and not here is passed over or left to a person. */
  readonly answers: Readonly<Record<string, Fields>>
  readonly photo?: readonly [r: number, g: number, b: number]
}

export const pileAnswers: Readonly<Record<string, Fields>> = {
  recipient: { value: 'adult' },
  quilts: { value: 'one' },
  quilt_size: { value: 'throw' },
  layout_wish: { value: 'quartered-nine-patch' },
  at_hand: { value: '14' },
  needed_in: { value: '16' },
  not_to_cut: { value: 'The embroidered initials on the apron pocket.' },
  leftovers: { value: 'return' },
  contact: { name: 'Marta Quillfeather', email: 'marta@quillfeather.example', phone: '' },
  last_word: { value: 'Some of these still make us laugh. Take your time.' },
}

const words = (text: string): Fields => ({ found: 'words', words: text })
const nothing = { value: 'none' }

export const garments: readonly DemoGarment[] = [
  {
    name: 'Blue check flannel of the keeper',
    photo: [52, 84, 138],
    answers: {
      kind: { value: 'button-shirt' },
      size: { value: 'L' },
      label: words('100% cotton\nMachine wash warm, tumble dry low, warm iron if needed'),
      wear: { value: 'sound' },
      history: nothing,
      pattern: { value: 'stripe-check' },
      colours: { value: ['white', 'blue'] },
      details: { value: 'must-use' },
      story: { value: 'Worn on the gallery every storm for nine winters.' },
    },
  },
  {
    name: 'Regatta T-shirt',
    answers: {
      kind: { value: 'tshirt' },
      size: { value: 'M' },
      label: words('90% cotton 10% polyester, do not iron print'),
      wear: { value: 'sound' },
      history: nothing,
      pattern: { value: 'single' },
      colours: { value: 'white' },
      print_make: { value: 'screen' },
      graphic_size: { value: '11' },
      details: nothing,
    },
  },
  {
    name: 'Choir sweatshirt',
    photo: [120, 120, 132],
    answers: {
      kind: { value: 'sweatshirt' },
      size: { value: 'XL' },
      label: words('50% cotton 50% polyester. Cool iron. Do not iron decoration.'),
      wear: { value: 'sound' },
      history: nothing,
      pattern: { value: 'single' },
      colours: { value: 'grey' },
      print_make: { value: 'film' },
      graphic_size: { value: '9.5' },
      details: nothing,
    },
  },
  {
    name: 'Grey fishing jumper',
    answers: {
      kind: { value: 'jumper' },
      size: { value: 'L' },
      label: words('100% pure new wool. Hand wash. Warm iron with steam.'),
      surface: { value: 'loose-knit' },
      wear: { value: 'holes' },
      history: nothing,
      weight: { value: 'heavy' },
      pattern: { value: 'solid' },
      colours: { value: 'grey' },
      details: nothing,
      where: { value: 'Left elbow, as big as a coin' },
    },
  },
  {
    name: 'Work jeans',
    answers: {
      kind: { value: 'jeans' },
      size: { value: 'M' },
      label: words('98% cotton 2% elastane, iron hot'),
      wear: { value: 'thin' },
      history: { value: 'bleeds' },
      pattern: { value: 'solid' },
      colours: { value: 'blue' },
      details: { value: 'hard-trims' },
      where: { value: 'Both knees' },
    },
  },
  {
    name: 'Sunday tie',
    answers: {
      kind: { value: 'tie' },
      label: { found: 'none', words: '' },
      wear: { value: 'sound' },
      history: { value: 'old' },
      pattern: { value: 'allover' },
      colours: { value: ['red', 'blue'] },
      print_make: { value: 'in-cloth' },
      details: nothing,
    },
  },
  {
    name: 'Baby suit with the yellow ducks',
    answers: {
      kind: { value: 'baby-suit' },
      size: { value: '6-12m' },
      label: words('100 % Baumwolle, heiß bügeln'),
      wear: { value: 'sound' },
      history: nothing,
      pattern: { value: 'allover' },
      colours: { value: ['yellow', 'many-colours'] },
      print_make: { value: 'in-cloth' },
      details: { value: ['must-use', 'hard-trims'] },
    },
  },
  {
    name: 'Velvet dancing dress',
    answers: {
      kind: { value: 'dress' },
      size: { value: 'S' },
      label: { found: 'signs', words: '' },
      signs: { value: ['iron-none', 'wash-hand', 'steam-no'] },
      surface: { value: 'pile' },
      wear: { value: 'sound' },
      history: { value: 'scent' },
      stretch: { value: 'none' },
      weight: { value: 'medium' },
      pattern: { value: 'solid' },
      colours: { value: 'green' },
      details: { value: 'melting-trims' },
    },
  },
  {
    name: 'Rain jacket from the boat',
    answers: {
      kind: { value: 'coat' },
      size: { value: 'L' },
      label: words('Shell: 100% polyamide. Lining: 100% polyester. Do not iron.'),
      surface: { value: 'film' },
      wear: { value: 'sound' },
      history: { value: 'stained' },
      weight: { value: 'medium' },
      pattern: { value: 'solid' },
      colours: { value: 'yellow' },
      details: { value: 'hard-trims' },
      where: { value: 'Oil at the cuffs' },
    },
  },
  {
    name: 'Trunk blanket',
    answers: {
      kind: { value: 'blanket' },
      label: { found: 'none', words: '' },
      surface: { value: 'woven' },
      wear: { value: 'sound' },
      history: { value: 'damp' },
    },
  },
  {
    name: 'Grandmother’s silk scarf',
    answers: {
      kind: { value: 'scarf' },
      label: words('Pura seta 100%'),
      surface: { value: 'woven' },
      wear: { value: 'shattered' },
    },
  },
  {
    name: 'Swim club suit',
    answers: {
      kind: { value: 'swimwear' },
      size: { value: 'S' },
      label: words('82% polyamide 18% elastane'),
      wear: { value: 'sound' },
      history: nothing,
      pattern: { value: 'solid' },
      colours: { value: 'black' },
      details: nothing,
    },
  },
  {
    name: 'Kitchen apron with initials',
    answers: {
      kind: { value: 'apron' },
      label: words('Lin 60 %, coton 40 %. Repasser à chaud.'),
      wear: { value: 'sound' },
      history: nothing,
      pattern: { value: 'solid' },
      colours: { value: 'cream' },
      details: { value: 'keep-a-spot' },
      where: { value: 'Pocket with the initials' },
    },
  },
  {
    name: 'Lifeboat crew uniform',
    answers: {
      kind: { value: 'uniform' },
      size: { value: 'L' },
      label: words('65% polyester 35% cotton, medium iron'),
      wear: { value: 'sound' },
      history: nothing,
      pattern: { value: 'solid' },
      colours: { value: 'blue' },
      details: { value: 'hard-trims' },
    },
  },
]
