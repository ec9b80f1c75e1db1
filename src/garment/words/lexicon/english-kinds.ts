import { list, type TellingWords } from './types.ts'

/** What garments are called, British and American. Plurals follow by themselves. From memory. */
export const englishKinds: TellingWords['kind'] = {
  tshirt: list(`
    t-shirt | tshirt | tee | tee shirt | teeshirt | t | tees | t shirt | band tee | concert tee | concert shirt |
    band shirt | tour shirt | graphic tee | tank top ? | tank ? | singlet ? | crew neck tee
  `),
  'long-sleeve': list(`
    long sleeve | long sleeve tee | long sleeved tee | long sleeve t-shirt | long sleeved t-shirt | long sleeve
    top | long sleeved top | longsleeve | longsleeve tee | long sleeve tshirt | long sleeved tshirt | long-sleeve
    shirt ? | long sleeved shirt ? | henley ? | turtleneck ? | polo neck ?
  `),
  polo: list('polo | polo shirt | golf shirt'),
  jersey: list(`
    jersey | sports jersey | football jersey | baseball jersey | hockey jersey | basketball jersey | soccer jersey
    | rugby jersey | team jersey | football shirt | football top | soccer shirt | cycling jersey | cricket jersey
    ? | rugby shirt ? | team shirt ? | netball top ?
  `),
  sweatshirt: list(`
    sweatshirt | sweat shirt | crewneck ? | crewneck sweatshirt | crew neck sweatshirt
  `),
  hoodie: list(`
    hoodie | hoody | hooded sweatshirt | hooded sweater ? | hooded top ? | zip hoodie | hooded jumper ? | zip up
    hoodie
  `),
  jumper: list(`
    jumper | sweater | cardigan | cardi | pullover | knit sweater | woolly jumper | jersey sweater | woolen jumper
    | sweater vest | tank knit ? | guernsey ? | aran | aran jumper | christmas jumper
  `),
  thermal: list(`
    thermal | thermals | thermal underwear | thermal top | thermal vest | long johns | long underwear | thermal
    undershirt
  `),
  'button-shirt': list(`
    flannel | flannel shirt | flannie | button shirt | button down | button down shirt | button up | button up
    shirt | buttondown | button front shirt | dress shirt | work shirt | oxford shirt | hawaiian shirt | plaid
    shirt | checked shirt | checkered shirt | check shirt | gingham shirt | tartan shirt | denim shirt | linen
    shirt | western shirt | cowboy shirt | lumberjack shirt | bowling shirt | aloha shirt | collared shirt |
    chambray shirt | guayabera | business shirt | office shirt | sunday shirt | buttoned shirt | pinstripe shirt |
    pinstriped shirt | shirt ? | lumberjack | fishing shirt ? | overshirt ? | striped shirt ? | flannelette shirt
    | flannels
  `),
  blouse: list('blouse | peasant top ? | tunic ?'),
  jeans: list(`
    jeans | jean | blue jeans | denims | denim jeans | bluejeans | denim shorts | jean shorts | dungarees ? |
    denim trousers | denim pants | black jeans
  `),
  trousers: list(`
    trousers | pants | slacks | chinos | khakis | shorts | sweatpants | sweat pants | joggers | leggings | cords |
    corduroys | dress pants | work pants | cargo pants | cargos | capris | jogging bottoms | tracksuit bottoms |
    yoga pants | work trousers | suit trousers | suit pants | breeches | trackies | jodhpurs | cargo shorts |
    overalls ?
  `),
  skirt: list('skirt | miniskirt | mini skirt | kilt | tutu ? | pinafore skirt'),
  dress: list(`
    dress | dresses | gown | wedding dress | wedding gown | sundress | sun dress | frock | summer dress | party
    dress | prom dress | evening dress | evening gown | ball gown | christening gown | sweater dress | shirt dress
    | jumper dress | shirtdress | t-shirt dress | pinafore | pinafore dress | maxi dress | house dress |
    housedress | maternity dress | bridesmaid dress | christening dress | baptism gown | baptism dress | cocktail
    dress | tea dress | wrap dress | polo dress | communion dress
  `),
  pyjamas: list(`
    pyjamas | pajamas | pyjama | pajama | pjs | pj | pjs set | jammies | jimjams | nightgown | nightie |
    nightdress | night dress | night gown | pyjama top | pajama top | pyjama bottoms | pajama bottoms | pajama
    pants | pyjama trousers | pyjama shirt | pajama shirt | nightshirt | night shirt | sleepshirt | pyjama set |
    pajama set | p j s
  `),
  'baby-suit': list(`
    onesie | babygro | baby grow | babygrow | sleepsuit | baby suit | bodysuit | body suit | romper | sleeper |
    footie pajamas ? | footies | baby onesie | baby romper | baby bodysuit | baby sleeper | baby sleepsuit |
    playsuit ? | baby vest | coming home outfit | newborn outfit | baby outfit
  `),
  blanket: list(`
    blanket | blankie | baby blanket | blanky | receiving blanket | throw blanket | afghan | crib blanket | cot
    blanket | swaddle | swaddle blanket | comforter ? | bedspread ? | fleece blanket | shawl blanket
  `),
  tie: list('tie | necktie | neck tie | bow tie | bowtie | silk tie | cravat ?'),
  scarf: list(`
    scarf | scarves | headscarf | head scarf | shawl | neck scarf | pashmina | bandana ? | kerchief ?
  `),
  apron: list('apron | pinny ? | kitchen apron'),
  uniform: list(`
    uniform | scrubs | school uniform | scout uniform | nurse uniform | nurses uniform | nursing uniform | army
    uniform | navy uniform | police uniform | work uniform | military uniform | dress uniform | scrub top |
    fatigues | bdu | nurse's uniform | postal uniform | firefighter uniform | marine uniform | uniform shirt ? |
    uniform jacket ? | uniform trousers ? | uniform pants ?
  `),
  swimwear: list(`
    swimsuit | bathing suit | swim suit | swimming costume | bikini | swim trunks | trunks | swimwear | swimming
    trunks | board shorts | swim shorts | bathers | cossie | swimming suit | speedo ?
  `),
  coat: list(`
    coat | jacket | blazer | overcoat | raincoat | rain jacket | trench coat | parka | anorak | windbreaker |
    denim jacket | jean jacket | leather jacket | bomber jacket | fleece jacket | suit jacket | sport coat |
    sports coat | sports jacket | suit coat | peacoat | pea coat | duffle coat | puffer jacket | puffer |
    letterman jacket | varsity jacket | tweed jacket | rain coat | winter coat | ski jacket | waxed jacket | biker
    jacket | snowsuit ? | cagoule | mackintosh | shacket | donkey jacket | down jacket | puffer coat | fur coat |
    sheepskin coat | windcheater | dinner jacket | tuxedo jacket | track jacket ? | dress coat | body warmer ? |
    wool coat | shirt jacket | windbreaker jacket | army jacket ? | military jacket ? | field jacket | down coat |
    camel coat | car coat | sherpa jacket
  `),
  other: list(`
    hat | cap | beanie | sock | socks | glove | gloves | mittens | bathrobe | dressing gown | robe | housecoat |
    house coat | towel | pillowcase | pillow case | tablecloth | table cloth | curtain | curtains | handkerchief |
    hankie | tea towel | bandanna ? | bag ? | tote bag | waistcoat | gilet | suit ? | vest ? | poncho | baseball
    cap | sash | belt ? | underwear ? | boxers ? | boxer shorts | bra ? | slippers | bib | costume ? | tracksuit ?
    | jumpsuit | bedsheet | bed sheet | fishing vest ? | kimono | sari | napkin | stuffed animal | teddy bear ? |
    woolly hat | knit hat
  `),
}
