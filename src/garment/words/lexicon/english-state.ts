import { list, type TellingWords } from './types.ts'

/** What English says of its state, and what is asked for it. From memory; what is in doubt is marked. */
export const englishState: Pick<
  TellingWords,
  'wear' | 'soil' | 'wash' | 'age' | 'consent' | 'mustUse'
> = {
  wear: {
    sound: list(`
      good condition | great condition | excellent condition | perfect condition | mint condition | fine condition
      | good shape | great shape | perfect shape | excellent shape | like new | as new | good as new | brand new |
      never worn | unworn | not worn out | barely worn | hardly worn | hardly ever worn | no wear | no damage |
      undamaged | intact | pristine | immaculate | perfect nick | good nick | very good condition | no signs of
      wear | flawless | no holes or thin spots | sound all over | new with tags | never used | still perfect | no
      wear and tear
    `),
    thin: list(`
      threadbare | worn thin | wearing thin | worn very thin | thin in places | thin at | thin on the elbows |
      thin in spots | thin spot | thin spots | thin patch | thin patches | thin place | thin places | thinning |
      gone thin | thin around | worn out | worn at | worn elbows | worn knees | worn on the elbows | worn collar |
      thin elbows | thin knees | worn on the knees | see-through in places | getting thin | a bit thin at | worn
      in places | bit worn at | wore thin | thread bare | worn soft ? | well worn ? | frayed ? | fraying ? | very
      worn ? | a bit worn ? | pretty worn ? | quite worn ? | really worn ? | faded and worn ? | shabby ? |
      tattered ? | pilled ? | pilling ? | well-loved ? | much worn ? | thin with age | thin from wear | thin from
      washing | worn patches | worn patch | worn spot | worn spots | thin all over | worn around
    `),
    holes: list(`
      hole | holes | torn | ripped | rip | rips | ripped knee | ripped knees | moth holes | moth-eaten | moth
      eaten | burn hole | burn holes | a tear | small tear | big tear | little tear | tear in | tear at | tear on
      | tear near | tears in | tears at | tears on | rips and tears | rip and tear | worn through | holey | full
      of holes | in holes | pinholes | pin holes | pinhole | tiny holes | moth hole | snagged hole | gash | slit
      in the ? | cigarette burn | cigarette burns | mended hole ? | patched hole ? | split seam ? | burnt hole |
      hole-y | torn up
    `),
    shattered: list(`
      shattered | shattering | brittle | crumbles | crumbling | disintegrating | disintegrates | falling to pieces
      ? | falls apart ? | falling apart ? | splits when touched | dry rot | dry rotted | dry-rotted | rotted |
      rotten | splits when i touch it | tears when touched | falls apart when touched | falls apart when i touch
      it
    `),
  },
  soil: {
    clean: list(`
      clean | freshly washed | no stains at all | spotless | spotlessly clean | stain free | stain-free |
      laundered | washed and ironed
    `),
    soiled: list(`
      stain | stains | stained | dirty | muddy | mud stain | mud on it | coffee stain | coffee stains | grass
      stain | grass stains | wine stain | ink stain | ink stains | food stain | food stains | grubby | filthy |
      soiled | tea stain | grease stain | grease stains | yellowed ? | yellowing ? | discoloured ? | discolored ?
      | sweat stain ? | sweat stains ? | grease spot | grease spots | spill | ketchup | gravy | rust stain | rust
      stains | dirt | lipstick stain | lipstick on | red wine stain | milk stain | milk stains | coffee spill |
      water stain | water stains | chocolate stain | bleach stain ? | bleach spot ? | bleach stains ? | bleach
      spots ? | deodorant marks ? | tomato sauce stain | blotch | blotches | smudge | smudges | splotch |
      watermark
    `),
    'body-fluid': list(`
      blood | blood stain | blood stains | bloodstain | bloodstains | bloodstained | blood-stained | bloody |
      urine | vomit | pee | pee stain | wee stain | spit-up ? | spit up ? | bodily fluid | bodily fluids | body
      fluid | body fluids | drop of blood | blood spot | blood spots | poop | faeces | feces
    `),
    pests: list(`
      moths | moth-eaten | moth eaten | moth holes | moth hole | bed bugs | bedbugs | carpet beetles | fleas |
      beetles | moth damage | moth larvae | silverfish | moth | carpet beetle | lice | mice
    `),
    mould: list(`
      mould | mold | mildew | mouldy | moldy | mildewed | musty | smells musty | musty smell | smells damp | damp
      smell | smells of damp | mold spots | mould spots | black mould | black mold
    `),
    chemical: list(`
      motor oil | engine oil | oil stain | oil stains | oil stained | oil on it | paint stain | paint stains |
      paint splatter | paint splatters | paint splashes | paint on it | paint spots | spots of paint | covered in
      paint | soot | gasoline | petrol | diesel | turpentine | oily | paint stained | paint-stained | oil-stained
      | paint spattered | paint splattered | smells of petrol | tar stain | drops of paint | oil spots | paint
      marks | splashes of paint | specks of paint | creosote | paint drips | axle grease | chemicals | weed killer
    `),
  },
  wash: {
    washed: list(`
      freshly washed | has been washed | was washed | washed and clean | washed | just washed | already washed |
      laundered | i washed it | washed it | clean and washed | been washed
    `),
    softener: list(`
      fabric softener | dryer sheet | dryer sheets | softener | fabric conditioner | washed with softener
    `),
    unwashed: list(`
      unwashed | not washed | hasn't been washed | has not been washed | never been washed | not been washed |
      haven't washed | have not washed | never washed | needs a wash | needs washing | did not wash | didn't wash
      | hasnt been washed | havent washed | wasn't washed | not yet washed | needs to be washed ?
    `),
    never: list(`
      don't wash | do not wash it | please don't wash | never wash it | dont wash | keep the smell | keep the
      scent | keep his smell | keep her smell | keep his scent | keep her scent | want to keep the smell | do not
      wash ? | still smells of him ? | still smells of her ? | still smells like him ? | still smells like her ? |
      still smells like dad ? | still smells like mom ? | still smells like mum ? | smells like him ? | smells
      like her ? | smells of him ? | smells of her ? | still smells like grandma ? | still smells like grandpa ? |
      please never wash | must not be washed | can't be washed | his smell is still ? | her perfume ? | don't want
      it washed | not to be washed | still has his smell ? | still has her smell ?
    `),
  },
  age: {
    old: list(`
      vintage ? | from the 50s | from the 60s | from the 70s | from the 80s | from the fifties | from the sixties
      | from the seventies | from the eighties | 1950s | 1960s | 1970s | 1980s | 1940s | 50s | 60s | 70s | 80s |
      decades old ? | half a century old
    `),
    historic: list(`
      antique ? | victorian | edwardian | 1800s | 1920s | 1910s | 1900s ? | 19th century | a hundred years old |
      100 years old | over 100 years old | heirloom ? | turn of the century ?
    `),
  },
  consent: {
    'no-cut': list(`
      do not cut it | don't cut it | dont cut it | must not be cut | can't be cut | cannot be cut | not to be cut
      | must not cut it | please don't cut | please do not cut | never cut | do not cut | don't cut | dont cut |
      no cutting | shouldn't be cut | should not be cut | don't want it cut | do not want it cut | mustn't be cut
      | don't want this cut | don't want this one cut | keep it uncut | keep it whole | keep it in one piece
    `),
    part: list(`
      keep the pocket | keep the signature | keep the name | keep the logo whole | keep the embroidery | keep the
      badge | keep the pocket whole | keep the collar | keep the picture whole | keep the print whole | keep the
      patch | keep that whole | keep his name | keep her name | keep the monogram | save the pocket | keep the
      pocket intact | keep the label | keep that part | keep the crest | keep the logo | keep the lettering | keep
      the button | keep the cuffs | keep the number
    `),
  },
  mustUse: {
    yes: list(`
      must be in the quilt | has to be in the quilt | must be in it | must be in | has to be in | needs to be in |
      must use | must go in | has to go in | definitely use | has to be used | must be used | a must | must have |
      absolutely must | please use this one | be sure to use | has to be part of | must be part of | don't leave
      this out | whatever happens it must | definitely want this in | definitely in the quilt | most important one
      | this one is a must | needs to go in | needs to be part of | have to use | make sure this is in | make sure
      it is in | really want this one in | definitely want this one in | the most important | want this one in for
      sure | needs to be in there | has to be in there | must-have | must make it in | can't leave this out |
      cannot be left out
    `),
  },
}
