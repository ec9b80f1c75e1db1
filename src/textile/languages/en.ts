import { englishNumbers } from './numbers.ts'
import { list, memory, seen } from './status.ts'
import type { LabelLanguage } from './types.ts'

export const english: LabelLanguage = {
  code: 'en',
  fibres: {
    cotton: seen('cotton'),
    wool: seen('wool'),
    virgin_wool: memory('virgin wool', 'fleece wool'),
    cashmere: seen('cashmere'),
    mohair: seen('mohair'),
    alpaca: seen('alpaca'),
    angora: seen('angora'),
    silk: seen('silk'),
    linen: seen('linen', 'flax'),
    hemp: seen('hemp'),
    jute: seen('jute'),
    ramie: seen('ramie'),
    viscose: seen('viscose', 'rayon'),
    modal: seen('modal'),
    lyocell: seen('lyocell'),
    cupro: seen('cupro'),
    acetate: seen('acetate'),
    triacetate: seen('triacetate'),
    polyester: seen('polyester'),
    polyamide: seen('polyamide', 'nylon'),
    acrylic: seen('acrylic'),
    modacrylic: seen('modacrylic'),
    elastane: seen('elastane', 'spandex'),
    polyurethane: seen('polyurethane'),
    polypropylene: seen('polypropylene', 'olefin'),
    polyethylene: seen('polyethylene'),
    chlorofibre: seen('chlorofibre', 'vinyon'),
    polylactide: seen('polylactide', 'PLA'),
    elastomultiester: seen('elastomultiester', 'elasterell-p'),
    elastodiene: seen('elastodiene', 'rubber'),
    metallised: seen('metallic', 'metallised fibre'),
    aramid: seen('aramid'),
    leather: memory('leather'),
    down: memory('down'),
    other: memory('other fibres', 'other fibers'),
  },
  alsoNamed: {
    cotton: list('cottons'),
    wool: list('lambswool | lamb wool | lambs wool | merino wool | merino | worsted wool'),
    virgin_wool: list('new wool'),
    cashmere: list('cashmere wool'),
    mohair: list('kid mohair'),
    alpaca: list('baby alpaca | alpaca wool'),
    angora: list('angora rabbit hair | rabbit hair'),
    silk: list('mulberry silk'),
    viscose: list(`
      viscose rayon | bamboo viscose | bamboo rayon | viscose from bamboo | rayon from bamboo |
      rayon made from bamboo | viscose made from bamboo
    `),
    triacetate: list('tri acetate'),
    triexta: list('triexta'),
    elastane: list('elastan | elasthane | elasthan'),
    elastodiene: list('lastrile'),
    elastolefin: list('lastol | elastolefin'),
    polyamide: list('polyamid | nylons'),
    polypropylene: list('polyolefin | poly propylene'),
    metallised: list(`
      metallized fiber | metallised | metallized | metallic fibre | metallic fiber | metallic yarn
      | metallic thread | metal fibre | metal fiber | metal
    `),
    saran: list('saran'),
    vinylal: list('vinylal | vinal'),
    glass: list('glass | glass fibre | glass fiber | fibreglass | fiberglass'),
    down: list('duck down | goose down'),
    chlorofibre: list('chlorofiber | pvc | polyvinyl chloride'),
    polylactide: list('polylactic acid'),
    acrylic: list('acrylics | polyacrylic'),
    linen: list('linens'),
    hemp: list('true hemp'),
    leather: list('cow leather | cowhide | sheepskin leather | suede leather'),
    other: list('other fibre | other fiber | others | miscellaneous fibers'),
    unknown: list(`
      unknown fibers | unknown fibres | undetermined fibers | undetermined fibres | unknown fiber
      | unknown fibre
    `),
  },
  sections: {
    body: list(`
      shell | outer | body | face | outer shell | outer fabric | main fabric | main body | main |
      self | self fabric | outside | outer layer | shell fabric | fabric 1 | exterior | bodice |
      outershell | body fabric | shell 1 | outer material | garment body | exterior fabric | main
      material
    `),
    lining: list(`
      lining | inner lining | liner | inside | lining fabric | body lining | lining 1 | inner |
      inner fabric | inner layer
    `),
    rib: list(`
      rib | ribbing | cuff | ribs | cuffs | rib knit | ribbed trim | rib trim | ribbed cuffs | hem
      rib | rib cuff | cuff rib | rib fabric | ribbing fabric
    `),
    filling: list(`
      filling | padding | fill | wadding | interlining | insulation | stuffing | fibrefill |
      fiberfill | infill | filler | padding 1 | inner filling | insulating filling
    `),
    sleeve: list('sleeve | sleeves | sleeve lining | sleeve fabric'),
    hood: list('hood | hood lining | hood fabric'),
    pocket: list('pocket | pockets | pocketing | pocket lining | pocket bag'),
    collar: list('collar | neckband | neck | collar fabric | collar rib'),
    trim: list(`
      trim | trims | trimming | binding | piping | contrast | contrast fabric | combination |
      panel | panels | side panel | side panels | gusset | crotch | yoke | mesh | overlay
    `),
    back: list('back | back panel'),
    front: list('front | front panel'),
    coating: list('coating | backing | laminate | membrane | coated with'),
    pile: list('pile | nap | fur pile'),
    ground: list('ground | ground fabric | base | base fabric | pile backing'),
    insert: list('insert | inserts | patch | elbow patch'),
    embroidery: list('embroidery | embroidery thread'),
    lace: list('lace'),
    waistband: list('waistband | belt | drawstring | elastic | waist'),
    top: list('top'),
    bottom: list('bottom | bottoms | pants'),
  },
  words: {
    pure: list('all | pure'),
    excluded: list(`
      exclusive of decoration | exclusive of ornamentation | exclusive of | excluding | exclude |
      exclusive | except | exc | excl
    `),
    details: list(`
      organic | organically grown | recycled | combed | carded | ring spun | ringspun | merino |
      pima | egyptian | upland | extra fine | superfine | super fine | extrafine | fine | lambs |
      lamb | baby | kid | brushed | mercerised | mercerized | bleached | unbleached | natural |
      bio | certified | pre consumer | post consumer | preconsumer | postconsumer | regenerated |
      conventional | soft | long staple | solution dyed | micro | washed | worsted | raw |
      mulberry | european | french | irish | peruvian | compact | open end | bamboo | bonded |
      textured | cationic | virgin | new | pure | dyed | yarn dyed | heather | stretch
    `),
    fillers: list(`
      of | fibre | fiber | fibres | fibers | yarn | microfibre | microfiber | filament | staple |
      and | with | plus | a | is | content | by weight | composition | fabric | material | materials
      | made | made of | made from | contents | fiber content | fibre content | contains |
      containing | blend | blended | approx | about | minimum | all new material | all new materials
      | new material only
    `),
    decoysBefore: list(`
      shrinkage | shrink | shrinks | shrinkage up to | shrink up to | shrinks up to | save |
      discount | extra | up to | sale | sale now | blocks | block | tolerance | reduces | reduced by
      | uv protection | may shrink | may vary | humidity | satisfaction | guaranteed | contains at
      least | at least | minimum of | made with at least | made with | of which | less than |
      donates | donate | vat | discount of | savings | off up to | money back
    `),
    decoysAfter: list(`
      off | discount | shrinkage | shrink | tolerance | uv | of uv | uv protection | satisfaction |
      guarantee | guaranteed | of profits | of proceeds | waterproof | windproof | authentic |
      original | made in | recyclable | recycled content | recycled materials | recycled material |
      smaller | larger | variation | handmade | hand made | biodegradable | vegan | vat | quality |
      of the rays | sustainable | money back | relative humidity | humidity | recycled packaging |
      residual shrinkage | maximum shrinkage | max shrinkage | organic certified | certified organic
      | off today | off everything | of sales | satisfied | satisfaction guaranteed | quality
      guaranteed | cheaper | happy | authentic quality | renewable | natural dyes | cruelty free |
      plastic free | safe | clean
    `),
    percent: list('percent | per cent | pct | percents'),
    or: list('or'),
    variants: list(`
      for heather | heather | heathers | heathered | heather colors | heather colours | heather
      grey | heather gray | marl | melange | solid | solids | solid colors | solid colours | other
      colors | other colours | all other colors | all other colours | grey marl | gray marl | ash
      | antique colors | safety colors
    `),
    hedges: list(`
      i guess | i think | i believe | i suppose | maybe | probably | perhaps | possibly | not sure |
      unsure | dont know | don't know | do not know | mostly | almost | nearly | looks like | feels
      like | could be | might be | seems | seems to be | some kind of | a bit of | bit of | a little
      | kind of | sort of | i m guessing | guess | presumably | or something | or so | as far as i
      know | a touch of | a mix of | some sort of
    `),
  },
  care: {
    iron: list('iron | ironing | ironed | irons | press | pressed | pressing'),
    ironNot: list('non ironable | not ironable | noniron able'),
    ironFree: list(`
      non iron | noniron | no iron needed | no ironing needed | no ironing necessary | no ironing
      required | no need to iron | iron free | easy iron | press cloth | pressing cloth | drip dry
      no iron | snap press | press stud | press studs | permanent press | permanent press cycle |
      durable press | permanent press setting wash
    `),
    cool: list(`
      cool | low | cold | low temperature | low heat | low temp | lowest | lowest setting | one dot
      | 1 dot | lukewarm | synthetic setting | synthetics setting | very low | delicate | gentle
      heat | silk setting | nylon setting | acrylic setting | low setting | cool setting | synthetic
      | synthetics | single dot
    `),
    warm: list(`
      warm | medium | moderate | med | medium heat | moderate heat | medium temperature | two dots |
      2 dots | middle | moderately | wool setting | polyester setting | moderately hot | medium low
      | low medium | medium hot | low to medium | permanent press setting | two dot | 2 dot
    `),
    hot: list(`
      hot | high | high heat | high temperature | highest | three dots | 3 dots | maximum heat |
      cotton setting | linen setting | three dot | 3 dot
    `),
    print: list(`
      print | prints | printed | printing | printed area | printed areas | printed part | printed
      side | printed design | decoration | decorations | decorated | design | decal | decals | motif
      | motifs | transfer | transfers | applique | appliques | embroidery | embroideries | graphic |
      graphics | artwork | trim | trims | trimming | ornament | ornaments | ornamentation |
      embellishment | embellishments | sequins | beads | logo | patch | image | pattern | rubber
      print | screen print | badge | label | labels | zipper | buttons | elastic | pleats | picture
      | pictures | photo | photos | drawing | lettering | letters | writing | vinyl | foil | glitter
      | rhinestones | stones | emblem | crest | slogan | heat transfer | prints area | graphic area
      | flock | studs | numbers | appliqués | decorative
    `),
    reverse: list(`
      reverse | reverse side | wrong side | inside out | inside | back side | backside | on the
      back | back | from inside | reversed | turn inside out | other side | underside
    `),
    steam: list('steam | steaming | steamed | steamer'),
    noSteam: list(`
      no steam | without steam | do not steam | never steam | do not use steam | no steaming |
      steam free | dont steam | don t steam | donot steam | avoid steam | steam not allowed | no
      steam iron | do not steam iron | do not use a steam iron | do not use steam iron | without
      using steam
    `),
    wash: list(`
      wash | machine wash | machine washable | washing | laundry | launder | laundered | washed |
      washable | rinse | wash separately
    `),
    handWash: list('hand wash | handwash | hand wash only | wash by hand | hand washable'),
    bleach: list(`
      bleach | bleaching | chlorine bleach | bleached | non chlorine bleach | chlorine
    `),
    tumble: list(`
      tumble | tumble dry | tumble drying | tumble dried | tumbledry | machine dry | dryer | dryer
      safe
    `),
    flatDry: list('dry flat | lay flat | lay flat to dry | flat dry | reshape and dry flat'),
    lineDry: list(`
      line dry | hang dry | hang to dry | drip dry | air dry | dry in shade | line dry in shade |
      hang | dry in the shade | dry
    `),
    dryClean: list(`
      dry clean | dryclean | dry cleaning | dry clean only | dry cleanable | dry cleaned |
      drycleaning | professionally clean | clean
    `),
    not: list(`
      do not | dont | don t | donot | not | never | no | cannot | can not | should not | must not
      | may not | without | avoid | do not use | do not use a
    `),
    or: list('or | nor'),
    and: list('and'),
    except: list(
      'except | except on | except for | avoid | avoiding | but not | other than | apart from | unless | around',
    ),
    notAfter: list(`
      not allowed | prohibited | not permitted | forbidden | not recommended | not suitable
    `),
    face: list(`
      right side | face | front | outside | face side | front side | face of garment `),
    otherVerbs: list(`
      wring | wringing | soak | spin | remove | use | twist | scrub | rub | dye | reshape | remove
      promptly | fabric softener | store | keep away | turn | stretch | expose | machine
    `),
    fillers: list(`
      on | at | with | using | use | a | an | the | set | to | setting | heat | temperature | temp |
      if | needed | necessary | required | when | as | only | iron | of | side | over | directly |
      while | damp | lightly | through | cloth | press | may | be | can | max | maximum | or | any |
      garment | fabric | in | for | it | this | by | steam | dry | below | up | exceed | not | part
      | area | pressing | low | desired | mark | direct | light | under | above | onto | against |
      but | however | please | should | then | your | its | safe | ok | okay | fine | well | always
      | gently | gentle | recommended | from | either | both | sides | still | moist | slightly |
      when needed | if required | if desired | as needed | only when | best | lightest | touch | you
      | tag | says | label says | damp cloth | my | me | this one | says to | told | also | just |
      still damp | pressing cloth | when damp | please do
    `),
  },
  numbers: englishNumbers,
}
