import { englishCloth } from './english-cloth.ts'
import { englishKinds } from './english-kinds.ts'
import { englishLooks } from './english-looks.ts'
import { englishState } from './english-state.ts'
import { type Lexicon, list } from './types.ts'

export const english: Lexicon = {
  code: 'en',
  tells: { kind: englishKinds, ...englishLooks, ...englishCloth, ...englishState },
  helps: {
    negates: list(`
      no | not | without | never | isn't | isnt | ain't | doesn't | doesnt | does not | hasn't | hasnt | don't |
      dont | free of | free from | none of | nor | neither | w/o | aren't | arent | wasn't | wasnt | no sign of |
      no signs of | zero | lacks | haven't | didn't | can't see any | cannot see any | cant see any | minus |
      instead of | rather than | used to have | no longer | don't see any | removed | got out | haven't found any
      | lacking | nothing like | could be mistaken for
    `),
    negatesBefore: list('free | none | came out | gone | washed out | nil | all came out'),
    hedges: list(`
      may have | might have | could have | may well | maybe | probably | i think | think it's | think its |
      possibly | perhaps | not sure | unsure | might be | may be | could be | i guess | guess | guessing | looks
      like | seems | seem | i believe | apparently | supposedly | presumably | likely | sort of | kind of | kinda
      | sorta | i suppose | not certain | no idea | don't know | dont know | can't tell | cant tell | feels like |
      seems like | i'd say | id say | roughly | approx | approximately | or so | ish | assume | assuming | pretty
      sure | fairly sure | somewhat | almost | nearly | mostly | mainly | i'm guessing | im guessing | not 100%
      sure | if i remember | hard to tell | hard to say | must be about | should be | would say | imagine | more
      or less | borderline | suspect | thinking it | reckon | i'd guess | not really sure | appears | say it's |
      dunno | mightve been | could well be | hopefully
    `),
    asks: list(`
      is | are | do | does | did | can | could | will | would | should | what | which | how | why | where | when |
      may | has | have | was | were | who | any | am | what's | whats | how's | is it ok | ok if | okay if | shall
      | isn't it ok | also can | also do | also is | and is | and can | and do | and are | but is | but can | but
      do | but are | so is | so can | so do | would it | any chance | quick question | hi can | hello can | hi do
      | please can | pls can | or is | or are | or should | or do | or can
    `),
    asksAnywhere: list(`
      do you take | do you accept | do you use | do you want | do you need | can you use | can you take | can i
      send | can i use | can you sew | can you cut | should i | is it ok | is it okay | is that ok | is that okay
      | is this ok | is this okay | is that a problem | is it a problem | will you take | would you take | is it
      possible | are they ok | are they okay | do you mind | could you use | could you take | does it matter | do
      i need | can we send | can we use | can it have | can it be | would it work | will it work | would it matter
      | may i send | how about | is it fine | is it alright | will that work | does that matter | what if | let me
      know if | wondering if | wonder if | wondering whether | would you use | can you do | can you still | are
      okay | do you handle | do you work with | can you handle | could you still | okay to send | ok to send | do
      you think
    `),
    supposes: list('if | unless | in case | whether | in the case of | as long as | provided'),
    people: list(`
      dad | dad's | dads | daddy | daddy's | father | father's | fathers | mum | mum's | mums | mom | mom's | moms
      | mommy | mummy | mother | mother's | mothers | grandma | grandma's | grandmas | grandmother | grandmother's
      | grandpa | grandpa's | grandpas | grandfather | grandfather's | granddad | granddad's | grandad | grandad's
      | grandads | gran | gran's | nan | nan's | nans | nana | nana's | nanny | nanny's | papa | papa's | pops |
      pop's | pop | gramps | grammy | grammy's | granny | granny's | son | son's | sons | daughter | daughter's |
      daughters | brother | brother's | brothers | sister | sister's | sisters | husband | husband's | husbands |
      wife | wife's | wifes | uncle | uncle's | aunt | aunt's | auntie | auntie's | aunty | cousin | cousin's |
      baby's | babys | his | her | hers | our | their | my | boyfriend's | girlfriend's | friend's | best friend's
      | nephew's | niece's | nephew | niece | hubby | hubby's | mam | mam's | ma's | pa's | kids' | kids | kid's |
      boy's | girl's | boys | girls | twins | twins' | stepdad's | stepmum's | stepmom's | father-in-law's |
      grandson's | granddaughter's | grandson | granddaughter | late | old man's | poppy's | nonna's | nonno's |
      opa's | oma's | abuela's | abuelo's | family
    `),
    parts: list(`
      collar | collars | cuff | cuffs | sleeve | sleeves | elbow | elbows | knee | knees | pocket | pockets |
      button | buttons | zip | zipper | hem | seam | seams | neck | neckline | shoulder | shoulders | waistband |
      waist | lining | logo | lettering | letters | letter | writing | text | print | prints | picture | graphic |
      trim | piping | edging | stitching | embroidery | thread | patch | patches | badge | stain | stains | mark |
      marks | spot | spots | ink | paint | wine | flowers | flower | roses | dots | dot | hearts | heart | stars |
      star | bow | bows | ribbon | ribbons | lace | sequins | sequin | beads | toggles | number | numbers | name |
      words | dinosaur | cat | dog | cats | dogs | duck | ducks | bear | bears | truck | car | cars | butterfly |
      butterflies | sun | hair | eyes | house | bike | train | armpit | armpits | underarms | underarm | chest |
      back | front | seat | tag | label | hood | drawstring | strings | bells | fringe | belt | background |
      border | edge | edges | sash | elephants | elephant | trees | leaves | leaf | anchor | anchors | bird |
      birds | cross | boat | boats | robot | whale | shark | monkey | bunny | rabbit | unicorn | rainbow | ball |
      guitar | skull | eagle | wolf | lion | tiger | fish | horse | cow | sheep | pig | mouse | owl | fox | rocket
      | tractor | wheel | wheels | elastic | crest | emblem | satin ribbon
    `),
    linings: list('lining | lined | interlining | inside'),
    shades: list(`
      light | dark | bright | pale | deep | faded | soft | washed | dusty | vivid | medium | rich | neon | pastel
      | dull | muted | vibrant | royal | lightish | darkish | very | really | kind | beautiful | pretty
    `),
    modifies: list(`
      work | old | favourite | favorite | summer | winter | sunday | school | college | university | team | sports
      | fishing | gardening | golf | football | baseball | hockey | soccer | rugby | basketball | concert | band |
      camp | wedding | prom | party | christmas | halloween | easter | baby | kids | childrens | ladies | lady's |
      womens | women's | mens | men's | man's | girls | boys | little | big | long | short | sleeve | sleeved |
      sleeveless | cropped | soft | warm | cosy | cozy | comfy | knitted | knit | wool | woolly | woolen | woollen
      | cotton | silk | denim | linen | polyester | fleece | velvet | corduroy | leather | suede | satin | lace |
      tweed | nylon | cashmere | flannel | acrylic | size | sized | dress | evening | church | running | cycling |
      gym | ski | ratty | raggedy | lovely | beautiful | pretty | first | last | same | the | a | an | his | her |
      my | this | that | good | nice | used | new | vintage | classic | v-neck | crew | neck | crewneck | button |
      buttoned | down | up | zip | zipped | hooded | collared | pocket | oversized | baggy | fitted | skinny |
      straight | leg | bootcut | waisted | high | low | pleated | maternity | nursing | army | navy | police |
      fire | scout | boy | girl | bridal | night | bed | house | kitchen | biker | bomber | rain | hunting |
      hiking | bowling | cowboy | rodeo | checked | stretchy | thin | thick | heavy | faded | worn | ripped | torn
      | stained | stripy | hand | handmade | homemade | made | chambray | oxford | merino | alpaca | mohair |
      jersey | organza | chiffon | damask | poplin | seersucker | crepe | taffeta | brocade | gingham | twill |
      canvas | cambric | calico | muslin | flannelette | ribbed | brushed | waffle | stonewashed | printed | rayon
      | viscose | bamboo | worn-out | tiny | huge | blend | pure | double | breasted | three | quarter | half |
      full | length | tour | graduation | marathon | race | charity | christening | birthday | patchwork |
      pullover | corporate | uniform | bathing | wrap | terry | quilted | padded | puffer | waxed | tulle |
      crochet | crocheted
    `),
    ands: list('and | & | + | n | plus | nor | with'),
    ors: list('or | versus | vs'),
    sizeMarks: list('size | sz | sized | size is | taille | size:'),
    besides: list(`
      over | under | like his | like her | like a | like the | like my | matching | matches | match | beside | than | wore it with | worn with | goes with |
      went with | wears with | wore with | under his | over his | to go with | wore under | cut from | made from |
      made out of | made into | turn into | from an old | underneath | beneath | next to | alongside | along with
      | similar to | not a | not the | for a | into a | instead of | sewn onto | as a | used as
    `),
    fillers: list(`
      a | an | the | my | this | that | these | those | is | it | it's | its | was | were | are | be | been | has
      | have | had | i | i'm | im | we | he | she | they | you | of | in | on | at | to | for | from | with | and
      | or | but | so | as | by | here | there | here's | heres | there's | theres | one | two | three | four |
      five | also | just | very | really | hi | hello | please | thanks | our | who | which | when | his | her |
      he's | she's | got | found | need | want | would | still | some | bit | little | few | lot | lots | all |
      then | only | too | me | him | them | us | about | because | after | before | while | where | into | out |
      up | down | off | over | wore | worn | wearing | wears | loved | loves | made | says | said | color | colour
      | colored | coloured | size | label | tag | made of | pair | piece | item | garment | next | first | second
      | another | think | ok | okay | hey | day | every | always | used | years | year | now | will | can | could
      | do | does | did | don't | not | no | never | any | both | each | if | than | time | times | what | how |
      that's | thats | i've | ive | we've | they're | she'd | he'd | kept | keep | since | until | during | comes
      | came | went | gave | bought | belonged | guess | may have | might have | could have | may well | maybe |
      probably | even | again | ever | between | through | across | along | near | around
    `),
    childish: list(`
      youth | kids | kid | child | child's | childs | childrens | children's | junior | boys | girls | boy's |
      girl's | kids' | kid's
    `),
    blocks: list(`
      hole in one | hole in my heart | hole in our hearts | hole in our lives | 18 holes | nine holes | 9 holes |
      button holes | buttonhole | buttonholes | button hole | arm hole | armhole | armholes | arm holes | thumb
      hole | thumb holes | thumbholes | stained glass | in tears | clean cut | clean up | clean out | cleaned out
      | clean lines | rip off | rest in peace | blood sweat and tears | blood drive | blood donor | blood bank |
      coat of paint | coat of arms | red cross | blue ridge | white water | black sea | green bay | red sea |
      white house | orange juice | red wine | white wine | black belt | blue collar | green card | green thumb |
      tie the knot | tie breaker | ties us | tied | family ties | tie up | dress up | dressed up | dressed | top
      left | plain weave | hot dog | in a heartbeat | heavy heart | heavy hearts | heavy smoker | thick and thin |
      thin ice | solid gold | solid wood | golden retriever | golden wedding | golden anniversary | grey hair |
      gray hair | white hair | red hair | red carpet | black friday | green tea | black tie | white tie | new york
      | white sox | red sox | blue jays | green house | greenhouse | blackboard | whiteboard | blueberry |
      blueberries | small town | big small | large family | small business | small child | small boy | small girl
      | small kids | small children | smallish | medium rare | blue eyes | green eyes | brown eyes | brown hair |
      black hair | silver lining | silver anniversary | silver wedding | rough patch | vegetable patch | cabbage
      patch | hard hat | hole punch | black hole | rabbit hole | keyhole | watering hole | moth balls | mothballs
      | mothball | heavy metal | heavy rain | heavy rock | pink floyd | deep purple | purple heart | purple rain |
      red hot | white christmas | black eye | yellow pages | code red | the blues | feeling blue | rhythm and
      blues | saint patrick | cotton candy | cotton on | hand me down | hand-me-down | hand me downs | cotton
      field | cotton fields | cotton buds | silk road | silk flowers | wool shop | leather shop | coffee shop | in
      the blue | out of the blue | once in a blue moon | full of life | no problem | no rush | no hurry | no
      matter | no one | no idea | no more | no longer | no doubt | clean freak | motor oil company | oil rig | oil
      rigs | oil field | oil company | paint shop | house painter | body shop | plain and simple | plain clothes |
      large part | in large part | small piece | the largest | the smallest | flower shop | flower girl | flower
      garden | rose garden | spot on | on the spot | a must see | stop sign | logo company | graphic designer |
      graphic design | hand painted | hand-painted | no logos | fur baby | fur babies | full stop | gold medal |
      gold star | gold rush | silver medal | bronze medal | white collar | pick up | big deal | gone through |
      picture day | picture frame | picture perfect | family picture | family photo | wedding photo | wedding
      photos | wedding picture | wedding pictures | in the picture | in the photo | in photos | in every photo |
      in this photo | photo album | wash day | on the back of the door | on the back of the chair | on the back
      porch | back of the closet | back of the wardrobe | front door | on the front porch | front porch | on the
      front lawn | front row | in stitches | dry clean | dry cleaned | dry cleaning | dry cleaner | dry cleaners |
      dry cleaner's | clean only | spot clean | spot clean only | clean by | clean with
    `),
    spellings: {
      shrit: 'shirt',
      shrt: 'shirt',
      tshrit: 'tshirt',
      thsirt: 'tshirt',
      tshirst: 'tshirt',
      flanel: 'flannel',
      flannal: 'flannel',
      flanell: 'flannel',
      flannell: 'flannel',
      bleu: 'blue',
      gery: 'grey',
      grean: 'green',
      gren: 'green',
      yelow: 'yellow',
      purpel: 'purple',
      balck: 'black',
      blak: 'black',
      blk: 'black',
      whtie: 'white',
      wite: 'white',
      broun: 'brown',
      brwn: 'brown',
      jumpr: 'jumper',
      swetter: 'sweater',
      sweter: 'sweater',
      jaket: 'jacket',
      jackt: 'jacket',
      trowsers: 'trousers',
      hoddie: 'hoodie',
      hodie: 'hoodie',
      pajams: 'pajamas',
      pyjams: 'pyjamas',
      pjamas: 'pajamas',
      dres: 'dress',
      jens: 'jeans',
      jeens: 'jeans',
      scraf: 'scarf',
      skrt: 'skirt',
      blous: 'blouse',
      larg: 'large',
      lrg: 'large',
      medum: 'medium',
      mediun: 'medium',
      smal: 'small',
      cotten: 'cotton',
      coton: 'cotton',
      cottn: 'cotton',
      woll: 'wool',
      hols: 'holes',
      hoel: 'hole',
      staned: 'stained',
      staind: 'stained',
      plad: 'plaid',
      plade: 'plaid',
      stiped: 'striped',
      stripd: 'striped',
      strechy: 'stretchy',
      polyster: 'polyester',
      poliester: 'polyester',
      navey: 'navy',
      burgandy: 'burgundy',
      maroone: 'maroon',
      bage: 'beige',
      biege: 'beige',
      beje: 'beige',
      orang: 'orange',
      pnk: 'pink',
      teh: 'the',
      blu: 'blue',
      grnadpa: 'grandpa',
      hoddies: 'hoodies',
      blnket: 'blanket',
      swaeter: 'sweater',
      jkt: 'jacket',
      lether: 'leather',
      lenght: 'length',
      perple: 'purple',
      silck: 'silk',
      linnen: 'linen',
      velvit: 'velvet',
      cordoroy: 'corduroy',
      corderoy: 'corduroy',
      aprn: 'apron',
      checkd: 'checked',
      chekced: 'checked',
      elbo: 'elbow',
    },
    ownAlone: list(`
      t | tee | tan | fine | top | pop | a | he | has | no one | me | as | one | come | red | once | son | sin |
      use | t shirt ? | nana | papa | jersey | cord | body | fur | cap | mice
    `),
  },
}
