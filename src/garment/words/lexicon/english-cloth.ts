import { list, type TellingWords } from './types.ts'

/** What English says of its cloth, and what is on it. From memory; what is in doubt is marked. */
export const englishCloth: Pick<
  TellingWords,
  'stretch' | 'weight' | 'surface' | 'trims' | 'bleed' | 'iron'
> = {
  stretch: {
    none: list(`
      no stretch | doesn't stretch | does not stretch | not stretchy | non-stretch | isn't stretchy | no stretch
      at all | doesnt stretch | no give | no stretch to it | not at all stretchy | won't stretch | not stretch |
      zero stretch
    `),
    little: list(`
      a bit stretchy | a little stretchy | slightly stretchy | bit of stretch | a bit of stretch | a little
      stretch | little bit of stretch | slight stretch | some stretch | stretches a bit | stretches a little |
      somewhat stretchy | little stretch | bit stretchy | stretches slightly
    `),
    much: list(`
      very stretchy | really stretchy | super stretchy | lots of stretch | stretches a lot | so stretchy |
      stretchy ? | extremely stretchy | stretches ? | a lot of stretch | quite stretchy ?
    `),
    'two-way': list(`
      four way stretch | 4 way stretch | 4-way stretch | two way stretch | 2 way stretch | stretches both ways |
      stretches in both directions | stretchy both ways | stretches every way | stretches in all directions |
      stretches a lot both ways
    `),
    bias: list('cut on the bias | bias cut | bias-cut'),
  },
  weight: {
    fine: list(`
      lightweight | light weight | sheer | very thin fabric | thin fabric | thin material | thin cloth | fine
      cotton | fine wool ? | fine knit ? | gauzy | chiffon ? | flimsy | see-through | see through | light fabric |
      light material | thin cotton | thin summer | very light fabric | thin and light | wispy | thin silk | light
      and airy | very lightweight | organza ? | voile ?
    `),
    medium: list('medium weight | mid-weight | midweight | medium thickness | mid weight'),
    heavy: list(`
      heavy | heavyweight | heavy weight | thick | chunky | thick fabric | thick material | thick cotton | heavy
      cotton | heavy duty ? | heavy wool | thick wool | canvas ? | bulky | very thick | super thick | hefty |
      tweed ?
    `),
    padded: list(`
      padded | quilted | puffer | puffy jacket | puffy coat | quilted jacket | puffer jacket | puffer coat | with
      filling | padding | down jacket | down filled | wadded | with wadding | down coat | down-filled | insulated
      ?
    `),
  },
  surface: {
    woven: list('woven | woven cloth | woven fabric | canvas | poplin | twill ? | gabardine ?'),
    knit: list(`
      jersey knit | t-shirt material | t-shirt fabric | fine knit | jersey fabric | jersey cotton
    `),
    'loose-knit': list(`
      hand-knit | hand knit | hand-knitted | hand knitted | handknit | handknitted | chunky knit | cable knit |
      cable-knit | crocheted | crochet | chunky-knit | home knitted | knitted by | knit by | loose knit | hand
      crocheted | hand knits | she knitted | she knit | knitted it | loosely knitted | granny square | granny
      squares
    `),
    pile: list(`
      velvet | velour | corduroy | fleece | terry | terrycloth | terry cloth | towelling | toweling | chenille |
      plush | sherpa | velveteen | minky | cord trousers | cord jacket | corduroys | cords | crushed velvet |
      velvety ? | fluffy ? | fuzzy ? | teddy fleece | polar fleece | micro fleece | faux fur ? | fake fur ? | cord
      skirt | cord | fleecy | fleece jacket | fleece blanket | cord dress | cord pants
    `),
    leather: list(`
      leather | suede | sheepskin ? | lambskin | nubuck | leather jacket | shearling ?
    `),
    fur: list('fur | real fur | mink | fur coat | rabbit fur | fox fur | beaver fur | mink coat'),
    film: list(`
      faux leather | fake leather | pleather | pvc | vegan leather | leatherette | patent leather | oilskin |
      rubberised | rubberized | oilcloth | plastic raincoat | vinyl jacket | vinyl coat | rubber raincoat |
      plastic coated | latex | imitation leather | plastic coating | waxed jacket ? | waxed cotton ?
    `),
  },
  trims: {
    removable: list(`
      buttons | zip | zipper | snaps | zippers | sewn-on badge | sewn on badge | sewn-on patch | sewn on patch |
      sewn-on patches | badges ? | patches ? | press studs | poppers | toggles | hooks and eyes | zips | metal
      buttons | brass buttons | sewn on patches | wooden buttons | snap buttons | pearl buttons | rivets
    `),
    meltable: list(`
      sequins | sequin | sequined | sequinned | beads | beaded | beading | sequins and beads | bead work |
      beadwork | bugle beads | paillettes
    `),
    glued: list(`
      rhinestones | rhinestone | glued on | glued-on | stuck on gems | stuck-on gems | hotfix stones | glued |
      hot-fix crystals | diamantes ? | diamante ? | crystals ? | stick-on gems | bedazzled ? | glued on patch |
      glued on stones
    `),
  },
  bleed: {
    bleeds: list(`
      color runs | colour runs | dye runs | colour comes off | color comes off | it bleeds | dye bleeds | color
      bleeds | colour bleeds | dye comes out | not colorfast | not colourfast | colour bled | color bled | dye
      rubs off | colour rubs off | bleeds in the wash | bleeds color | bleeds colour | color comes out | colour
      comes out | dye comes off | loses its dye
    `),
    fast: list('colorfast | colourfast | colour fast | color fast'),
  },
  iron: {
    none: list(`
      do not iron | don't iron | dont iron | no ironing | label says no iron | can't be ironed | cannot be ironed
      | must not be ironed | not to be ironed | never iron
    `),
    cool: list(`
      cool iron | iron cool | low iron | iron low | iron on low | cool iron only | iron cold
    `),
    warm: list('warm iron | iron warm | medium iron | iron on medium'),
    hot: list('hot iron | iron hot'),
  },
}
