import { domains } from '../../src/garment/facts.ts'
import type { EstimatePaper } from '../../src/papers/estimate-paper.ts'
import type {
  Action,
  Answering,
  ChatPage,
  FieldError,
  Frame,
  Grade,
  Option,
  Packed,
  Photo,
  Question,
  QuestionPage,
  Said,
  Tag,
  Tally,
} from '../../src/web/chat/view.ts'
import type { AttachedPhoto } from '../../src/web/chat/view-question.ts'
import { quiltSamples } from './quilts.ts'

/** Invented piles of an invented workshop: every page once, with the cases that strain it. */

const action = (act: Action['act'], item = 0): Action => ({
  act,
  postTo: '/i/sample/act',
  hidden: { idem: 'idem-1', seq: '12', item: String(item) },
})

const photo = (n: number): Photo => ({
  id: `photo-${n}`,
  thumb: `photo-${(n % 3) + 1}.svg`,
  view: `photo-${(n % 3) + 1}.svg`,
  alt: `Photo ${n} of the garment`,
})

const attached = (n: number): AttachedPhoto => ({
  ...photo(n),
  shows: n === 1 ? 'front' : '',
  sides: [
    { value: '', label: 'Not said' },
    { value: 'front', label: 'The front' },
  ],
  goes: false,
})

/** Paths of what a page loads. */
export type Files = Pick<Frame, 'style' | 'script' | 'spotScript' | 'sheetScript' | 'framedScript'>

export const frame = (language: string, files: Files): Frame => ({
  shop: {
    name: 'Lantern Street Quilts',
    tagline: 'Quilts from the clothes you could not part with',
    email: 'hello@lantern-street.example',
    phone: '+1 555 0142',
  },
  language,
  languages: [
    { code: 'en', name: 'English', href: '?lang=en' },
    { code: 'es', name: 'Español', href: '?lang=es' },
  ],
  ...files,
  look: null,
  homeHref: '/',
  saveHref: '/i/sample/keep',
  notice: null,
})

const said = (question: string, asked: string, words: string): Said => ({
  question,
  asked,
  said: words,
  href: `/i/sample/q/1/${question}`,
})

const shirtAnswers = [
  said('kind', 'What it is', 'Shirt with buttons, also flannel'),
  said('label', 'Care label', '100% cotton, warm iron'),
  said('wear', 'Wear', 'Sound all over'),
  said('pattern', 'Pattern', 'Stripes or checks'),
]

const tag = (n: number, name: string, kind: string, more: Partial<Tag> = {}): Tag => ({
  n,
  code: `K7-${n}`,
  name,
  kind,
  kindWords: kind,
  swatch: null,
  grade: 'sound',
  sentence: 'Firm, sound cotton. It can be fused, pressed and cut as it is.',
  next: 'Wash it once more without softener, then pack it.',
  flags: [],
  better: [],
  together: null,
  answers: shirtAnswers,
  photos: [],
  open: false,
  goOnHref: null,
  dropped: false,
  actions: [action('copy-garment', n), action('drop-garment', n)],
  ...more,
})

const greenShirt = tag(1, 'Green check shirt', 'button-shirt', {
  swatch: { colours: ['#3f7d4e', '#f5f5f3'], words: 'green and white' },
})
const sweatshirt = tag(2, 'Choir sweatshirt', 'sweatshirt', {
  grade: 'care',
  sentence: 'It stretches, and the picture on it is a raised print.',
  next: 'Send it. We sew a backing in before we cut.',
  flags: [
    {
      severity: 'care',
      message: 'The print would melt under a hot iron.',
      next: 'We press it from the back only.',
    },
    { severity: 'note', message: 'The picture stays whole, in one block.', next: null },
  ],
  photos: [photo(1), photo(2)],
})
const workTrousers = tag(3, 'grey work trousers', 'trousers', {
  grade: null,
  sentence: null,
  next: null,
  open: true,
  answers: shirtAnswers.slice(0, 3),
})
const silkScarf = tag(
  4,
  'Grandmother Oda’s long silk evening scarf with the hand-rolled hem',
  'scarf',
  {
    grade: 'eyes',
    sentence: 'Old silk may split when it is pulled.',
    next: 'Keep it for now. A person looks at your photos and writes to you.',
    flags: [{ severity: 'stop', message: 'Please do not wash it.', next: 'We look first.' }],
  },
)
const gardenCoat = tag(5, 'Garden coat', 'coat', {
  grade: 'home',
  sentence: 'It has mould. Mould spreads in a box and can harm whoever opens it.',
  next: 'Keep it apart from the others. You could send us a photo instead.',
})
const leftOut = tag(6, 'Blue swimsuit', 'swimwear', {
  dropped: true,
  grade: null,
  actions: [action('restore-garment', 6)],
})
const halfDone = tag(7, 'Garment 7', 'other', {
  kind: null,
  kindWords: null,
  code: null,
  grade: null,
  sentence: null,
  next: null,
  open: true,
  goOnHref: '/i/sample/q/7/kind',
  answers: [],
})

const some = [greenShirt, sweatshirt]
const all = [greenShirt, sweatshirt, workTrousers, silkScarf, gardenCoat, leftOut, halfDone]
const twelve = Array.from({ length: 12 }, (_, i) =>
  tag(i + 1, `Shirt number ${i + 1}`, 'tshirt', { grade: i === 4 ? 'care' : 'sound' }),
)

const tally = (garments: number, byGrade: Partial<Record<Grade, number>> = {}): Tally => ({
  garments,
  byGrade: { sound: 0, care: 0, eyes: 0, home: 0, ...byGrade },
  advice: 'A throw wants 8 to 10. Two more checks or plains would make a good ground.',
  counted: 'settled',
  againHref: '/i/sample',
})

const option = (value: string, label: string, more: Partial<Option> = {}): Option => ({
  value,
  label,
  help: null,
  drawing: null,
  chosen: false,
  ...more,
})

const question = (answering: Answering, more: Partial<Question> = {}): Question => ({
  id: 'stretch',
  item: 3,
  itemName: 'grey work trousers',
  position: { at: 5, atMost: 9 },
  title: 'Pull the cloth sideways. Does it stretch?',
  help: 'Fold it so that a hand’s width lies between your thumbs, then pull gently.',
  why: 'Cloth that stretches needs a backing before it is cut, or the blocks come out wavy.',
  drawing: null,
  cautions: [],
  look: null,
  measure: null,
  optional: false,
  answering,
  errors: [],
  note: '',
  postTo: '/i/sample/answer',
  hidden: { idem: 'idem-2', seq: '12' },
  backHref: '/i/sample/q/3/wear',
  ...more,
})

const asking = (asked: Question, more: Partial<QuestionPage> = {}): QuestionPage => ({
  page: 'question',
  question: asked,
  tags: [...some, workTrousers],
  tally: tally(3),
  pileAnswers: [],
  actions: [],
  ...more,
})

const refused = (field: FieldError['field'], sentence: string): FieldError => ({ field, sentence })

const stretches = [
  option('none', 'Not at all'),
  option('little', 'A little, and it springs back', { chosen: true }),
  option('much', 'A lot'),
  option('unknown', 'I can’t tell'),
]

const wears = [
  option('sound', 'Sound all over'),
  option('thin', 'Thin in places', { help: 'Light shines through more in some spots.' }),
  option('holes', 'Holes or tears'),
  option('shattered', 'It splits or crumbles', { help: 'Please do not pull it.' }),
]

const signs = [
  'iron-none',
  'iron-cool',
  'iron-warm',
  'iron-hot',
  'iron-absent',
  'steam-no',
  'wash-none',
  'wash-hand',
  'wash-30',
  'wash-40',
  'wash-60',
  'dry-none',
  'dry-low',
  'dry-normal',
  'dry-flat',
]

const sizes = [
  '2T',
  '3T',
  '4T',
  '5T',
  'XS',
  'S',
  'M',
  'L',
  'XL',
  '2XL',
  '3XL',
  '4XL',
  'I do not know',
]

const estimate: EstimatePaper = {
  low: '$412.00',
  likely: '$438.00',
  high: '$455.00',
  quilt: 'throw, quartered nine-patch',
  grounds: 'Counted piece by piece, from the plan of your quilt.',
  groups: [
    {
      label: 'Our work',
      amount: '$326.00',
      lines: [
        { label: 'Sewing 52 × 65 in', amount: '$290.00', note: '180 pieces' },
        { label: 'Preparing', amount: '$36.00', note: '3 garments. Between $30.00 and $41.00' },
      ],
    },
    {
      label: 'What goes into it',
      amount: '$112.00',
      lines: [
        { label: 'Backing and batting', amount: '$84.00', note: null },
        { label: 'Extra cloth', amount: '$28.00', note: '1/2 yd × $56.00' },
      ],
    },
  ],
  how: [
    {
      label: 'Backing and batting',
      sentences: ['58 × 71 inches: two widths of 40 inches, the seam running across the quilt.'],
    },
  ],
  reasons: [
    'Whether the silk scarf can come along.',
    'How much sound cloth the work trousers give.',
  ],
  terms: [
    { label: 'Deposit', text: '$120.00, once we have seen your garments' },
    { label: 'Holds until', text: '30 June 2031' },
    { label: 'Takes about', text: '9 to 11 weeks after the box arrives' },
    { label: 'Postage', text: 'about 6 lb, in a box of 16 × 12 × 10 in' },
  ],
}

const packed = (
  n: number,
  name: string,
  kind: string,
  grade: Grade,
  more: Partial<Packed> = {},
): Packed => ({
  n,
  code: `K7-${n}`,
  name,
  kind,
  grade,
  steps: ['Wash it without softener and let it dry.', 'Pin its tag to the neck.'],
  photo: null,
  ...more,
})

const confirmed = (print: boolean): ChatPage => ({
  page: 'confirmed',
  status: null,
  posting: null,
  pile: 'K7',
  confirmedOn: '4 March 2031',
  packed: [
    packed(1, 'Green check shirt', 'button-shirt', 'sound'),
    packed(2, 'Choir sweatshirt', 'sweatshirt', 'care', { photo: photo(1) }),
    packed(3, 'grey work trousers', 'trousers', 'sound', { steps: [] }),
  ],
  waiting: [packed(4, 'Grandmother Oda’s long silk evening scarf', 'scarf', 'eyes', { steps: [] })],
  keptHome: [
    {
      n: 5,
      name: 'Garden coat',
      reason: 'It has mould. Mould spreads in a box and can harm whoever opens it.',
      next: 'You could send us a photo of it instead.',
    },
  ],
  packing: [
    'Check that every garment is clean and quite dry.',
    'Fold each one and pin its tag on.',
    'Put all of them into one bag, then into the box.',
    'Lay this list on top.',
  ],
  address: ['Lantern Street Quilts', '8 Lantern Street', 'Millbrook'],
  cautions: ['Garments with mould, pests or body fluids do not go into the box.'],
  estimate,
  ahead: [
    'A person looks at your scarf and writes to you within two days.',
    'You pack the box and post it.',
    'We check every garment and confirm the price before any work begins.',
  ],
  keepLink: 'https://lantern-street.example/i/q8Zr3vXw1LJ0aPsTnE5uYbKd',
  papers: [
    { label: 'Show it as paper', href: '?print' },
    { label: 'Packing list (PDF)', href: '/i/sample/list.pdf' },
  ],
  quilts: quiltSamples.several,
  print,
})

const trouble = (
  kind: Extract<ChatPage, { page: 'trouble' }>['trouble'],
  code: string,
  sentence: string,
): ChatPage => ({
  page: 'trouble',
  trouble: kind,
  code,
  toName: code,
  sentence,
  ways: [{ label: 'Go to the first page', href: '/' }],
})

const labelAsking = (
  photo: NonNullable<Extract<Answering, { kind: 'label' }>['photo']>,
  words: string,
  errors: readonly FieldError[] = [],
) =>
  asking(
    question(
      { kind: 'label', words, found: words ? 'words' : null, iron: null, longest: 2000, photo },
      {
        id: 'label',
        title: 'What does the care label say?',
        help: 'Look in the neck and in the side seam.',
        drawing: 'find-the-label',
        errors,
      },
    ),
  )

export const samples: Readonly<Record<string, ChatPage>> = {
  start: {
    page: 'start',
    start: action('start'),
    welcome: ['We are two sewers and one long table. Every quilt here is cut by hand.'],
  },
  choice: asking(
    question(
      { kind: 'choice', options: stretches },
      {
        drawing: 'pull-test',
        tap: 'each',
        just: { words: 'Wear: Thin in places', href: '/i/sample/q/3/wear' },
      },
    ),
  ),
  'choice-first': asking(
    question(
      {
        kind: 'choice',
        options: [
          option('adult', 'A grown-up'),
          option('child', 'A child of three or more'),
          option('under3', 'A child of one or two'),
          option('under1', 'A baby under one year'),
        ],
      },
      {
        id: 'recipient',
        item: 0,
        itemName: null,
        title: 'Who is the quilt for?',
        help: 'This tells us which cautions matter.',
        backHref: null,
      },
    ),
    { tags: [], tally: null },
  ),
  'choice-twelve-tags': asking(
    question(
      { kind: 'choice', options: wears },
      {
        id: 'wear',
        item: 13,
        itemName: 'Red jumper',
        drawing: 'hold-to-the-light',
        title: 'Hold it to the light. How worn is it?',
        help: null,
      },
    ),
    { tags: twelve, tally: tally(13), actions: [action('add-garment'), action('review-pile')] },
  ),
  'choice-refused': asking(
    question(
      { kind: 'choice', options: wears },
      {
        id: 'wear',
        errors: [refused('value', 'Please answer first, or choose “ask a person”.')],
        cautions: ['Brittle cloth tears when it is pulled. Look first, with your hands still.'],
      },
    ),
    { pileAnswers: [said('recipient', 'For', 'A grown-up')] },
  ),
  kind: asking(
    question(
      {
        kind: 'choice',
        options: domains.kind.map((kind) =>
          option(kind, kind.replace('-', ' '), { chosen: kind === 'jeans' }),
        ),
      },
      { id: 'kind', title: 'What is it?', help: 'Choose the nearest.' },
    ),
  ),
  size: asking(
    question(
      { kind: 'choice', options: sizes.map((size) => option(size.replaceAll(' ', '-'), size)) },
      { id: 'size', title: 'Which size is it?', help: 'The size stands on the label in the neck.' },
    ),
  ),
  many: asking(
    question(
      {
        kind: 'many',
        options: [
          option('none', 'None of these'),
          option('stained', 'Stains that will not wash out', { chosen: true }),
          option('softener', 'Washed with softener or dryer sheets', { chosen: true }),
          option('scent', 'It keeps a scent that matters to you', {
            help: 'We do not wash it unless you say so.',
          }),
        ],
      },
      {
        id: 'history',
        tap: 'none',
        title: 'Is any of this true of it?',
        cautions: [
          'Wear gloves if it is soiled or smells of mould, and keep it apart from the others.',
        ],
      },
    ),
  ),
  number: asking(
    question(
      {
        kind: 'number',
        value: '12',
        min: 1,
        max: 40,
        step: 0.5,
        unit: { value: 'inches', label: 'inches' },
      },
      { id: 'graphic_size', title: 'How wide is the picture?', drawing: 'measure-a-graphic' },
    ),
  ),
  'number-refused': asking(
    question(
      {
        kind: 'number',
        value: 'about twelve',
        min: 1,
        max: 40,
        step: 0.5,
        unit: { value: 'inches', label: 'inches' },
      },
      {
        id: 'graphic_size',
        title: 'How wide is the picture?',
        errors: [refused('value', 'Please write a number, such as 12.')],
      },
    ),
  ),
  text: asking(
    question(
      { kind: 'text', value: '', longest: 600, lines: true },
      {
        id: 'story',
        title: 'Would you like to tell its story?',
        help: 'A line or two, if you wish.',
        optional: true,
        note: 'May I send it without a label?',
      },
    ),
  ),
  'text-line': asking(
    question(
      { kind: 'text', value: 'Dad’s <b>blue</b> "flannel"', longest: 60, lines: false },
      { id: 'name', title: 'What do you call this one?', optional: true, skipLabel: 'No name' },
    ),
  ),
  label: asking(
    question(
      { kind: 'label', words: '', found: null, iron: null, longest: 2000, photo: null },
      {
        id: 'label',
        title: 'What does the care label say?',
        help: 'Look in the neck and in the side seam.',
        drawing: 'find-the-label',
      },
    ),
  ),
  'label-refused': asking(
    question(
      {
        kind: 'label',
        words: 'cotton 60 poly 40',
        found: 'words',
        iron: 'warm',
        longest: 2000,
        photo: null,
      },
      {
        id: 'label',
        title: 'What does the care label say?',
        errors: [
          refused('words', 'Please copy at least one line of the label.'),
          refused('iron', 'Please choose what it says about ironing.'),
        ],
      },
    ),
  ),
  'label-photo': labelAsking({ taken: null, read: null, typed: '' }, ''),
  'label-read': labelAsking(
    {
      taken: photo(1),
      read: {
        verdict: 'sure',
        summary: 'We read: cotton 60 %, polyester 40 %. Warm iron.',
        doubted: [],
        advice: [],
      },
      typed: '',
    },
    '60% COTTON\n40% POLYESTER\nWARM IRON',
  ),
  'label-unsure': labelAsking(
    {
      taken: photo(2),
      read: {
        verdict: 'unsure',
        summary: 'We read: cotton 60 %. Nothing about ironing.',
        doubted: ['4O% P0LYESTER', 'WRM 1RON'],
        advice: [],
      },
      typed: 'mostly cotton, I <b>think</b>',
    },
    '60% COTTON\n4O% P0LYESTER\nWRM 1RON',
  ),
  'label-blurred': labelAsking(
    {
      taken: photo(3),
      read: {
        verdict: 'none',
        summary: null,
        doubted: [],
        advice: [
          'The photo is blurred. Please hold the phone still, a hand’s breadth further away, and tap on the label.',
          'The photo is dark. Please take it near a window, or with a lamp beside it.',
        ],
      },
      typed: '',
    },
    '',
  ),
  'label-no-picture': labelAsking({ taken: null, read: null, typed: '' }, 'cotton', [
    refused('photo', 'That file is not a picture we can read.'),
  ]),
  symbols: asking(
    question(
      {
        kind: 'symbols',
        options: signs.map((sign) =>
          option(sign, sign.replace('-', ', '), { chosen: sign === 'iron-warm' }),
        ),
      },
      { id: 'signs', title: 'Which signs are on the label?', help: null },
    ),
  ),
  photo: asking(
    question(
      { kind: 'photo', attached: [1, 2, 3].map(attached), most: 6, advice: [] },
      {
        id: 'photos',
        title: 'A photo or two?',
        help: 'Lay it flat on a plain floor.',
        drawing: 'lay-out-for-a-photo',
        optional: true,
      },
    ),
  ),
  'photo-again': asking(
    question(
      {
        kind: 'photo',
        attached: [attached(1)],
        most: 6,
        advice: [
          'It is dark. Please take it near a window, or turn on a light.',
          'A part of the garment is outside the picture. Please step back until all of it shows.',
        ],
      },
      { id: 'photos', title: 'A photo or two?', optional: true },
    ),
  ),
  'photo-seen': asking(
    question(
      {
        kind: 'choice',
        options: [
          option('solid', 'Plain'),
          option('allover', 'Printed all over'),
          option('stripe-check', 'Stripes or checks'),
          option('single', 'One picture', { chosen: true }),
        ],
      },
      {
        id: 'pattern',
        title: 'How does it look?',
        look: {
          photo: photo(1),
          box: { x: 0.35, y: 0.3, w: 0.3, h: 0.28 },
          sheet: null,
          filled: false,
          sentence: 'On the photo it looks as if it carries one picture.',
        },
      },
    ),
  ),
  spots: asking(
    question(
      {
        kind: 'spots',
        photos: [
          {
            photo: photo(1),
            width: 600,
            height: 600,
            marks: [
              { n: 1, x: 0.4, y: 0.55 },
              { n: 2, x: 0.12, y: 0.3 },
            ],
          },
          { photo: photo(2), width: 600, height: 600, marks: [] },
        ],
        options: [
          option('hole', 'Hole', { chosen: true }),
          option('stain', 'Stain'),
          option('thin', 'Thin place'),
        ],
        spots: [
          {
            n: 1,
            value: 'p1:0.4:0.55:hole',
            words: '1: Hole, photo 1',
            parts: [
              { value: '', label: 'I am not sure' },
              { value: 'front', label: 'Front' },
            ],
            part: 'front',
          },
          { n: 2, value: 'p1:0.12:0.3:stain', words: '2: Stain, photo 1', parts: [], part: '' },
        ],
        against: [
          { kind: 'stain', sentence: 'You marked a stain. Before, you said nothing of stains.' },
        ],
      },
      {
        id: 'spots',
        title: 'Can you show us where on the photo?',
        help: 'First say what it is. Then tap the place on the photo.',
        optional: true,
        errors: [refused('spots', 'A mark must lie on the photo.')],
      },
    ),
  ),
  'sheet-refused': {
    page: 'sheet',
    title: 'Mark the sheet of paper',
    lead: 'Is there a sheet of paper on this photo of the green check shirt? Tap its four corners.',
    backHref: '/i/sample',
    shown: {
      photo: photo(1),
      width: 600,
      height: 600,
      sheets: [
        option('letter', 'Letter paper, 8 1/2 by 11 inches', { chosen: true }),
        option('a4', 'A4 paper, 21 by 29.7 cm'),
        option('id1', 'A card', { help: 'Paper is better.' }),
      ],
      corners: [
        { x: '10', y: '12' },
        { x: '30.5', y: '12' },
        { x: '30', y: '40' },
        { x: '', y: '' },
      ],
      outline: [
        [0.1, 0.12],
        [0.305, 0.12],
        [0.3, 0.4],
      ],
      wide: 264,
      isLarge: false,
      coarse: true,
      told: 'Three corners are marked. Tap the last one.',
      refused: 'All four corners are needed. One is still missing.',
      standing: 'You marked the corners: A4 paper, 21 by 29.7 cm.',
      canTakeBack: true,
      postTo: '/i/sample/photos/1/sheet',
      hidden: { from: 'graphic_size' },
    },
  },
  'photo-refused': asking(
    question(
      { kind: 'photo', attached: [], most: 1, advice: [] },
      {
        id: 'photos',
        title: 'A photo?',
        errors: [refused('photo', 'That file is not a picture we can read.')],
      },
    ),
  ),
  contact: asking(
    question(
      { kind: 'contact', name: 'Ida Lindqvist-Marsh', email: 'ida@', phone: '' },
      {
        id: 'contact',
        item: 0,
        itemName: null,
        title: 'Where can we reach you?',
        help: null,
        errors: [
          refused('email', 'Please look at your email again: something is missing after the @.'),
        ],
      },
    ),
  ),
  confirm: asking(
    question(
      { kind: 'confirm', options: [option('yes', 'Yes, that is right'), option('no', 'No')] },
      {
        id: 'label_check',
        title: 'We read: 60% cotton, 40% polyester. Is that right?',
        help: null,
      },
    ),
  ),
  'gather-none': {
    page: 'gather',
    tags: [],
    tally: { ...tally(0), advice: null },
    pileAnswers: [
      said('recipient', 'For', 'A grown-up'),
      said('size', 'Size', 'Throw, for a sofa'),
    ],
    actions: [action('add-garment')],
    quilts: null,
    cautions: [],
  },
  gather: {
    page: 'gather',
    tags: all,
    tally: tally(6, { sound: 1, care: 1, eyes: 1, home: 1 }),
    pileAnswers: [
      said('recipient', 'For', 'A grown-up'),
      said('size', 'Size', 'Throw, for a sofa'),
    ],
    actions: [action('add-garment'), action('review-pile')],
    quilts: quiltSamples.laying,
    cautions: [],
  },
  'gather-full': {
    page: 'gather',
    tags: twelve,
    tally: tally(12, { sound: 11, care: 1 }),
    pileAnswers: [],
    actions: [action('confirm-pile')],
    quilts: quiltSamples.one,
    cautions: ['A baby under one year should sleep without any quilt, blanket or soft bedding.'],
  },
  review: {
    page: 'review',
    tags: all,
    tally: tally(6, { sound: 1, care: 1, eyes: 1, home: 1 }),
    pileAnswers: [
      said('recipient', 'For', 'A grown-up'),
      said('size', 'Size', 'Throw, for a sofa'),
    ],
    cautions: [],
    estimate,
    quilts: quiltSamples.one,
    open: [{ label: 'Garment 7 is not finished', href: '/i/sample/q/7/kind' }],
    confirm: action('confirm-pile'),
    backHref: '/i/sample',
  },
  confirmed: confirmed(false),
  'confirmed-paper': confirmed(true),
  save: {
    page: 'save',
    keepLink: 'https://lantern-street.example/i/q8Zr3vXw1LJ0aPsTnE5uYbKd',
    holds: 'The link works until 30 August 2031.',
    mail: action('mail-link'),
    email: 'ida@',
    errors: [refused('email', 'Please look at your email again.')],
    mailedTo: null,
    yoursHref: '/i/sample/yours',
    backHref: '/i/sample',
  },
  'save-mailed': {
    page: 'save',
    keepLink: 'https://lantern-street.example/i/q8Zr3vXw1LJ0aPsTnE5uYbKd',
    holds: 'The link works until 30 August 2031.',
    mail: action('mail-link'),
    email: '',
    errors: [],
    mailedTo: 'ida@example.org',
    yoursHref: '/i/sample/yours',
    backHref: '/i/sample',
  },
  'trouble-not-found': trouble(
    'not-found',
    'not_found',
    'Look at the address once more, or start from the first page.',
  ),
  'trouble-gone': trouble(
    'gone',
    'not_found',
    'This link is too old. Ask us and we mail you a new one.',
  ),
  'trouble-stale': trouble(
    'stale',
    'question_moved_on',
    'Another answer came first. Here is where you are now.',
  ),
  'trouble-too-many': trouble(
    'too-many',
    'too_many_requests',
    'Please wait a minute and try again.',
  ),
  'trouble-refused': trouble(
    'refused',
    'bad_input',
    'Something in the form was not as we expect it.',
  ),
  'trouble-fault': trouble(
    'fault',
    'internal',
    'We have been told about it. Please try again in a while.',
  ),
  'trouble-busy': trouble('busy', 'busy', 'Please try again in a minute.'),
}
