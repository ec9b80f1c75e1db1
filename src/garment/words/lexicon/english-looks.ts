import { list, type TellingWords } from './types.ts'

/** What English says of how large it is and what it looks like. From memory; what is in doubt is marked. */
export const englishLooks: Pick<
  TellingWords,
  'size' | 'colour' | 'pattern' | 'printMake' | 'oneWay'
> = {
  size: {
    XS: list('xs | x-small | extra small | xsmall'),
    S: list('small | sm'),
    M: list('medium | med'),
    L: list('large | lg'),
    XL: list('xl | x-large | extra large | xlarge | 1x ?'),
    '2XL': list(`
      2xl | xxl | xx-large | 2x | 2 xl | double xl | double extra large | xx large | 2x large | extra extra large
    `),
    '3XL': list('3xl | xxxl | 3x | 3 xl | triple xl | 3x large | xxx-large'),
    '4XL': list('4xl | xxxxl | 4x | 4 xl'),
    '5XL': list('5xl | xxxxxl | 5x | 5 xl'),
    '2T': list('2t | 2 t'),
    '3T': list('3t | 3 t'),
    '4T': list('4t | 4 t'),
    '5T': list('5t | 5 t'),
    '0-3m': list('newborn size | newborn | nb size'),
    'youth-XS': list('youth xs | kids xs | youth extra small | youth x-small | yxs | child xs'),
    'youth-S': list(`
      youth s | youth small | kids small | childs small | kids s | childrens small | ys | child small | boys small
      | girls small
    `),
    'youth-M': list(`
      youth m | youth medium | kids medium | childs medium | kids m | childrens medium | ym | child medium | boys
      medium | girls medium | youth med
    `),
    'youth-L': list(`
      youth l | youth large | kids large | childs large | kids l | childrens large | yl | child large | boys large
      | girls large
    `),
    'youth-XL': list(`
      youth xl | kids xl | youth extra large | childrens xl | yxl | child xl | boys xl | girls xl
    `),
  },
  colour: {
    black: list('black | jet black'),
    grey: list(`
      grey | gray | charcoal | charcoal grey | charcoal gray | silver ? | slate grey | slate gray | heather grey |
      heather gray | greyish | grayish | light grey
    `),
    white: list('white | snow white'),
    cream: list(`
      cream | ivory | off-white | ecru | beige | cream coloured | cream colored | oatmeal ? | creamy white
    `),
    brown: list(`
      brown | chocolate brown | chocolate ? | tan | camel ? | brownish | khaki ? | taupe ? | coffee brown | rust
      brown
    `),
    red: list(`
      red | burgundy | maroon | crimson | scarlet | wine red | cherry red | dark red | reddish | wine coloured |
      cranberry ?
    `),
    pink: list(`
      pink | hot pink | fuchsia | magenta | rose pink | dusty rose | dusty pink | baby pink | pinkish | blush pink
      | blush ? | salmon ? | salmon pink
    `),
    orange: list('orange | burnt orange | rust ? | peach ? | coral ? | tangerine | apricot ?'),
    yellow: list(`
      yellow | mustard | mustard yellow | lemon yellow | gold ? | golden ? | lemon ? | canary yellow
    `),
    green: list(`
      green | olive | olive green | lime green | forest green | mint green | emerald | emerald green | sage green
      | khaki green | army green | hunter green | bottle green | mint ? | sage ? | greenish | lime ? | kelly green
      | sea green | moss green
    `),
    blue: list(`
      blue | navy | navy blue | royal blue | sky blue | baby blue | cobalt | cobalt blue | indigo | denim blue |
      turquoise ? | teal ? | aqua ? | bluish | powder blue | midnight blue | petrol blue | cornflower blue | steel
      blue | electric blue
    `),
    purple: list(`
      purple | violet | lilac | lavender | plum ? | mauve | aubergine | purplish | eggplant ?
    `),
    'many-colours': list(`
      multicolored | multicoloured | multicolor | multicolour | multi-colored | multi-coloured | rainbow | rainbow
      coloured | rainbow colored | many colours | many colors | all sorts of colours | all colours
    `),
  },
  pattern: {
    solid: list(`
      plain | solid | solid colour | solid color | plain colour | plain color | no pattern | no print | no prints
      | no picture | no logo ? | nothing on it | no design ? | one plain colour | one plain color | all one color
      | all one colour | one color | one colour | solid coloured | solid colored | unpatterned | single colour |
      single color
    `),
    allover: list(`
      floral | flowers | flowery | flower print | flower pattern | floral print | paisley | polka dot | polka dots
      | polka-dotted | polka dotted | dotted | dots | camo | camouflage | leopard print | leopard | animal print |
      zebra print | tie-dye | tie-dyed | tie dyed | tye dye | all over print | all-over print | allover print |
      printed all over | pattern all over | print all over | hawaiian ? | palm trees | batik | ditsy | all over
      pattern | patterned ? | covered in | covered with | all over | liberty print | snake print | tropical print
      | cherry print | all over it | small flowers | little flowers | tiny flowers | roses all over | geometric
      print | geometric pattern | paisley pattern | star print | hearts all over | stars all over | ditsy floral |
      snakeskin print | spotted ? | printed with | abstract pattern | abstract print | fair isle ? | dot print |
      psychedelic print | roses ? | daisies | sunflowers ? | cartoon print ? | hawaiian print | ikat | paw prints
      | argyle | toile
    `),
    'stripe-check': list(`
      plaid | tartan | checked | checkered | chequered | gingham | stripe | stripes | striped | stripey | stripy |
      pinstripe | pinstripes | pinstriped | houndstooth | buffalo check | buffalo plaid | madras | plaid pattern |
      checks | check pattern | check shirt | checkerboard | dogtooth | prince of wales check | breton ? |
      windowpane check | black watch | tattersall | candy striped | hickory stripe
    `),
    single: list(`
      logo | graphic | slogan | lettering | team name | big picture | picture of | picture on | photo of | big
      logo | print on the front | print on the back | design on the front | design on the back | logo on the front
      | writing on the front | writing on the back | writing on it | with a picture | number on the back | print
      of a | says | that says | saying | it reads | with the words | drawing of | name on the back | name on the
      front | on the front | on the chest | on the front of it | cartoon on | print on the chest | number on the
      front | iron-on letters | emblem | crest | mascot on | image of | words on it | picture in front | big print
      on | school name | on its front | photo print | band name | tour dates | tour dates on the back | team logo
      | printed on the front | printed on the back | name and number | on front | on back | iron-on transfer |
      applique ? | graphic print
    `),
  },
  printMake: {
    'in-cloth': list(`
      woven in | yarn dyed | yarn-dyed | print is in the cloth | printed in the cloth | woven into the cloth |
      woven into the fabric | dyed into
    `),
    screen: list(`
      screen print | screen printed | screen-printed | screenprint | screenprinted | silkscreen | silk screen |
      silk screened | silkscreened | silk-screened | screen printing
    `),
    film: list(`
      vinyl print | vinyl letters | vinyl lettering | vinyl logo | vinyl number | vinyl numbers | iron-on | iron
      on letters | iron-on letters | rubbery print | rubber print | rubbery | rubbery logo | rubber logo | puff
      print | puffy print | puffy letters | puffy lettering | glitter print | glitter letters | glittery letters |
      glittery print | glitter lettering | glitter writing | glittery | foil print | foil letters | foil lettering
      | foil logo | foil | flock | flocked | flocked letters | flock print | heat transfer | heat transfer print |
      plastic print | plastic letters | transfer print | plasticky print | raised rubber print | vinyl design |
      vinyl transfer | rubber letters | peeling vinyl | vinyl ? | shiny print ? | glitter logo | metallic print |
      glitter ?
    `),
    sublimated: list('sublimated | sublimation | sublimation print | dye sublimation | dye sub'),
  },
  oneWay: {
    yes: list(`
      one-way print | one way print | directional print | one way pattern | directional | one-way pattern | has an
      up and a down
    `),
  },
}
