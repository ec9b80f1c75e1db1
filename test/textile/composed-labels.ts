import type { FibreKey } from '../../src/textile/fibres.ts'
import type { LabelCase } from './hard-labels.ts'

/** What a language's labels print, written for these tests from general knowledge of labels. */
export interface Phrases {
  readonly code: string
  /** Seven names: cotton, polyester, wool, polyamide, elastane, viscose, acrylic. */
  readonly names: readonly [string, string, string, string, string, string, string]
  readonly shell: string
  readonly lining: string
  readonly wash: string
  readonly noBleach: string
  readonly noTumble: string
  readonly none: readonly string[]
  readonly cool: readonly string[]
  readonly warm: readonly string[]
  readonly hot: readonly string[]
  readonly print: string
  readonly reverse: string
  readonly noSteam: string
}

const keys: readonly FibreKey[] = [
  'cotton',
  'polyester',
  'wool',
  'polyamide',
  'elastane',
  'viscose',
  'acrylic',
]

export const phrases: readonly Phrases[] = [
  {
    code: 'en',
    names: ['cotton', 'polyester', 'wool', 'nylon', 'spandex', 'rayon', 'acrylic'],
    shell: 'Shell',
    lining: 'Lining',
    wash: 'Machine wash cold, gentle cycle',
    noBleach: 'Do not bleach',
    noTumble: 'Do not tumble dry',
    none: ['Do not iron', 'Never iron'],
    cool: ['Cool iron', 'Iron on low heat', 'Iron at low temperature if needed'],
    warm: ['Warm iron', 'Iron at medium temperature'],
    hot: ['Hot iron', 'Iron on high heat'],
    print: 'Do not iron on print',
    reverse: 'Warm iron on reverse side',
    noSteam: 'Cool iron without steam',
  },
  {
    code: 'fr',
    names: ['coton', 'polyester', 'laine', 'polyamide', 'élasthanne', 'viscose', 'acrylique'],
    shell: 'Extérieur',
    lining: 'Doublure',
    wash: 'Lavage en machine à 30 °C',
    noBleach: 'Ne pas blanchir',
    noTumble: 'Ne pas sécher en machine',
    none: ['Ne pas repasser', 'Repassage interdit'],
    cool: ['Repasser à basse température', 'Fer doux', 'Repassage à température douce'],
    warm: ['Repasser à température moyenne', 'Fer moyen'],
    hot: ['Repasser à haute température', 'Fer chaud'],
    print: "Ne pas repasser sur l'impression",
    reverse: "Repasser sur l'envers à température moyenne",
    noSteam: 'Repasser à basse température sans vapeur',
  },
  {
    code: 'es',
    names: ['algodón', 'poliéster', 'lana', 'poliamida', 'elastano', 'viscosa', 'acrílico'],
    shell: 'Exterior',
    lining: 'Forro',
    wash: 'Lavar a máquina en agua fría',
    noBleach: 'No usar lejía',
    noTumble: 'No secar en secadora',
    none: ['No planchar', 'Prohibido planchar'],
    cool: ['Planchar a temperatura baja', 'Planchar a baja temperatura'],
    warm: ['Planchar a temperatura media', 'Planchar a temperatura moderada'],
    hot: ['Planchar a temperatura alta', 'Plancha caliente'],
    print: 'No planchar el estampado',
    reverse: 'Planchar del revés a temperatura media',
    noSteam: 'Planchar a baja temperatura sin vapor',
  },
  {
    code: 'de',
    names: ['Baumwolle', 'Polyester', 'Wolle', 'Polyamid', 'Elasthan', 'Viskose', 'Polyacryl'],
    shell: 'Oberstoff',
    lining: 'Futter',
    wash: 'Maschinenwäsche bei 30 °C',
    noBleach: 'Nicht bleichen',
    noTumble: 'Nicht im Trockner trocknen',
    none: ['Nicht bügeln', 'Bügeln nicht erlaubt'],
    cool: ['Bei niedriger Temperatur bügeln', 'Bügeln mit geringer Temperatur'],
    warm: ['Mäßig heiß bügeln', 'Bei mittlerer Temperatur bügeln'],
    hot: ['Heiß bügeln', 'Bei hoher Temperatur bügeln'],
    print: 'Nicht über den Druck bügeln',
    reverse: 'Auf links mäßig heiß bügeln',
    noSteam: 'Bei niedriger Temperatur ohne Dampf bügeln',
  },
  {
    code: 'it',
    names: ['cotone', 'poliestere', 'lana', 'poliammide', 'elastan', 'viscosa', 'acrilico'],
    shell: 'Esterno',
    lining: 'Fodera',
    wash: 'Lavare in lavatrice a 30 °C',
    noBleach: 'Non candeggiare',
    noTumble: 'Non asciugare in asciugatrice',
    none: ['Non stirare', 'Stiratura vietata'],
    cool: ['Stirare a bassa temperatura', 'Ferro tiepido'],
    warm: ['Stirare a media temperatura', 'Stirare a temperatura media'],
    hot: ['Stirare ad alta temperatura', 'Ferro caldo'],
    print: 'Non stirare sulla stampa',
    reverse: 'Stirare al rovescio a media temperatura',
    noSteam: 'Stirare a bassa temperatura senza vapore',
  },
  {
    code: 'pt',
    names: ['algodão', 'poliéster', 'lã', 'poliamida', 'elastano', 'viscose', 'acrílica'],
    shell: 'Exterior',
    lining: 'Forro',
    wash: 'Lavar à máquina a 30 °C',
    noBleach: 'Não usar lixívia',
    noTumble: 'Não secar na máquina',
    none: ['Não passar a ferro', 'Não engomar'],
    cool: ['Passar a ferro a baixa temperatura', 'Ferro morno'],
    warm: ['Passar a ferro a temperatura média', 'Ferro médio'],
    hot: ['Passar a ferro a alta temperatura', 'Ferro quente'],
    print: 'Não passar a ferro sobre a estampa',
    reverse: 'Passar pelo avesso a temperatura média',
    noSteam: 'Passar a ferro a baixa temperatura sem vapor',
  },
  {
    code: 'nl',
    names: ['katoen', 'polyester', 'wol', 'polyamide', 'elastaan', 'viscose', 'acryl'],
    shell: 'Buitenstof',
    lining: 'Voering',
    wash: 'Machinewas op 30 °C',
    noBleach: 'Niet bleken',
    noTumble: 'Niet in de droogtrommel',
    none: ['Niet strijken', 'Strijken niet toegestaan'],
    cool: ['Strijken op lage temperatuur', 'Lauw strijken', 'Op lage temperatuur strijken'],
    warm: ['Matig heet strijken', 'Strijken op gemiddelde temperatuur'],
    hot: ['Heet strijken', 'Strijken op hoge temperatuur'],
    print: 'Niet op de opdruk strijken',
    reverse: 'Binnenstebuiten strijken op gemiddelde temperatuur',
    noSteam: 'Strijken op lage temperatuur zonder stoom',
  },
  {
    code: 'pl',
    names: ['bawełna', 'poliester', 'wełna', 'poliamid', 'elastan', 'wiskoza', 'akryl'],
    shell: 'Materiał wierzchni',
    lining: 'Podszewka',
    wash: 'Prać w pralce w 30 °C',
    noBleach: 'Nie wybielać',
    noTumble: 'Nie suszyć w suszarce',
    none: ['Nie prasować', 'Prasowanie zabronione'],
    cool: ['Prasować w niskiej temperaturze', 'Prasować letnim żelazkiem'],
    warm: ['Prasować w średniej temperaturze', 'Prasować ciepłym żelazkiem'],
    hot: ['Prasować w wysokiej temperaturze', 'Prasować gorącym żelazkiem'],
    print: 'Nie prasować nadruku',
    reverse: 'Prasować na lewej stronie w średniej temperaturze',
    noSteam: 'Prasować w niskiej temperaturze bez pary',
  },
  {
    code: 'sv',
    names: ['bomull', 'polyester', 'ull', 'polyamid', 'elastan', 'viskos', 'akryl'],
    shell: 'Yttertyg',
    lining: 'Foder',
    wash: 'Maskintvätt 30 °C',
    noBleach: 'Ej blekning',
    noTumble: 'Ej torktumling',
    none: ['Ej strykning', 'Strykes ej', 'Får ej strykas'],
    cool: ['Strykning vid låg temperatur', 'Stryks med svag värme'],
    warm: ['Strykning vid medelvärme', 'Strykes medelvarmt'],
    hot: ['Strykning vid hög temperatur', 'Strykes hett'],
    print: 'Stryk ej på trycket',
    reverse: 'Strykes från avigsidan, medelvarm',
    noSteam: 'Strykning vid låg temperatur utan ånga',
  },
  {
    code: 'da',
    names: ['bomuld', 'polyester', 'uld', 'polyamid', 'elastan', 'viskose', 'akryl'],
    shell: 'Yderstof',
    lining: 'For',
    wash: 'Maskinvask ved 30 °C',
    noBleach: 'Tåler ikke blegning',
    noTumble: 'Må ikke tørretumbles',
    none: ['Må ikke stryges', 'Tåler ikke strygning', 'Stryges ikke'],
    cool: ['Stryges ved lav temperatur', 'Strygning ved lav varme'],
    warm: ['Stryges ved middel temperatur', 'Strygning ved middelvarme'],
    hot: ['Stryges ved høj temperatur', 'Strygning ved høj varme'],
    print: 'Stryg ikke på trykket',
    reverse: 'Stryges på vrangen ved middel varme',
    noSteam: 'Stryges ved lav temperatur uden damp',
  },
  {
    code: 'ro',
    names: ['bumbac', 'poliester', 'lână', 'poliamidă', 'elastan', 'viscoză', 'acrilic'],
    shell: 'Față',
    lining: 'Căptușeală',
    wash: 'Spălare la mașină la 30 °C',
    noBleach: 'Nu folosiți înălbitor',
    noTumble: 'Nu uscați în uscător',
    none: ['Nu călcați', 'A nu se călca', 'Călcarea interzisă'],
    cool: ['Călcați la temperatură joasă', 'Călcați la temperatură scăzută'],
    warm: ['Călcați la temperatură medie', 'Călcare la temperatură moderată'],
    hot: ['Călcați la temperatură ridicată', 'Călcați la temperatură înaltă'],
    print: 'Nu călcați imprimeul',
    reverse: 'Călcați pe dos la temperatură medie',
    noSteam: 'Călcați la temperatură joasă fără abur',
  },
  {
    code: 'cs',
    names: ['bavlna', 'polyester', 'vlna', 'polyamid', 'elastan', 'viskóza', 'akryl'],
    shell: 'Vrchní materiál',
    lining: 'Podšívka',
    wash: 'Prát v pračce na 30 °C',
    noBleach: 'Nebělit',
    noTumble: 'Nesušit v sušičce',
    none: ['Nežehlit', 'Nesmí se žehlit'],
    cool: ['Žehlit při nízké teplotě', 'Žehlit vlažnou žehličkou'],
    warm: ['Žehlit při střední teplotě', 'Žehlit teplou žehličkou'],
    hot: ['Žehlit při vysoké teplotě', 'Žehlit horkou žehličkou'],
    print: 'Nežehlit potisk',
    reverse: 'Žehlit po rubu při střední teplotě',
    noSteam: 'Žehlit při nízké teplotě bez páry',
  },
  {
    code: 'tr',
    names: ['pamuk', 'polyester', 'yün', 'poliamid', 'elastan', 'viskon', 'akrilik'],
    shell: 'Dış kumaş',
    lining: 'Astar',
    wash: '30 °C makinede yıkayın',
    noBleach: 'Ağartıcı kullanmayın',
    noTumble: 'Makinede kurutmayın',
    none: ['Ütülemeyin', 'Ütü yapmayınız', 'Ütülenmez'],
    cool: ['Düşük ısıda ütüleyin', 'Ilık ütü'],
    warm: ['Orta ısıda ütüleyin', 'Orta sıcaklıkta ütüleyiniz'],
    hot: ['Yüksek ısıda ütüleyin', 'Sıcak ütü'],
    print: 'Baskının üzerini ütülemeyin',
    reverse: 'Ters yüzünden orta ısıda ütüleyin',
    noSteam: 'Düşük ısıda buharsız ütüleyin',
  },
  {
    code: 'zh',
    names: ['棉', '聚酯纤维', '羊毛', '锦纶', '氨纶', '粘纤', '腈纶'],
    shell: '面料',
    lining: '里料',
    wash: '最高洗涤温度30℃',
    noBleach: '不可漂白',
    noTumble: '不可翻转干燥',
    none: ['不可熨烫', '请勿熨烫'],
    cool: ['低温熨烫', '熨斗底板最高温度110℃'],
    warm: ['中温熨烫', '熨斗底板最高温度150℃'],
    hot: ['高温熨烫', '熨斗底板最高温度200℃'],
    print: '请勿熨烫印花处',
    reverse: '反面中温熨烫',
    noSteam: '低温熨烫，不可使用蒸汽',
  },
  {
    code: 'ja',
    names: ['綿', 'ポリエステル', 'ウール', 'ナイロン', 'ポリウレタン', 'レーヨン', 'アクリル'],
    shell: '表地',
    lining: '裏地',
    wash: '液温は30℃を限度とし洗濯機で洗濯',
    noBleach: '漂白禁止',
    noTumble: 'タンブル乾燥禁止',
    none: ['アイロン禁止', 'アイロンはかけないでください', 'アイロン不可'],
    cool: ['アイロンは低温で', '低い温度でアイロン'],
    warm: ['アイロンは中温で', 'アイロン仕上げは底面温度150℃を限度'],
    hot: ['アイロンは高温で', '高温でアイロン'],
    print: 'プリント部分にはアイロンをかけないでください',
    reverse: '裏側から中温でアイロン',
    noSteam: 'アイロンは低温で、スチームなし',
  },
  {
    code: 'ko',
    names: ['면', '폴리에스터', '모', '나일론', '폴리우레탄', '레이온', '아크릴'],
    shell: '겉감',
    lining: '안감',
    wash: '30℃ 물로 세탁기 사용',
    noBleach: '표백 금지',
    noTumble: '기계건조 금지',
    none: ['다림질 금지', '다림질 하지 마십시오'],
    cool: ['낮은 온도로 다림질', '저온 다림질', '다림질은 80~120℃로'],
    warm: ['중간 온도로 다림질', '다림질은 140~160℃로'],
    hot: ['높은 온도로 다림질', '다림질은 180~210℃로'],
    print: '프린트 부분은 다림질 하지 마십시오',
    reverse: '뒤집어서 중온 다림질',
    noSteam: '낮은 온도로 다림질, 스팀 금지',
  },
]

type Make = readonly (readonly [share: string, fibre: number])[]

const makes: readonly Make[] = [
  [['100', 0]],
  [
    ['60', 0],
    ['40', 1],
  ],
  [
    ['95', 0],
    ['5', 4],
  ],
  [
    ['70', 2],
    ['30', 3],
  ],
  [
    ['62.5', 5],
    ['33', 3],
    ['4.5', 4],
  ],
  [
    ['80', 6],
    ['20', 2],
  ],
]

const told = (make: Make): string =>
  make.map(([share, fibre]) => `${Number(share)} ${keys[fibre]}`).join(', ')

const shareFirst = (make: Make, { names, code }: Phrases): string =>
  make
    .map(([share, fibre]) =>
      code === 'tr' ? `%${share} ${names[fibre]}` : `${share}% ${names[fibre]}`,
    )
    .join(' ')
const nameFirst = (make: Make, { names, code }: Phrases): string =>
  make
    .map(
      ([share, fibre]) =>
        `${names[fibre]} ${code === 'tr' ? `%${share}` : `${share.replace('.', ',')} %`}`,
    )
    .join(', ')
const byLines = (make: Make, { names }: Phrases): string =>
  make.map(([share, fibre]) => `${share}%\n${names[fibre]!.toUpperCase()}`).join('\n')

const writings = [shareFirst, nameFirst, byLines]

function* labelsOf(phrases: Phrases, turn: number): Generator<LabelCase> {
  const levels = ['none', 'cool', 'warm', 'hot'] as const
  const { wash, noBleach, noTumble } = phrases
  let n = turn
  for (const level of levels) {
    for (const ironing of phrases[level]) {
      const make = makes[n % makes.length]!
      const write = writings[n % writings.length]!
      const care = [wash, noBleach, noTumble, ironing]
      const separators = ['. ', '\n', '; '] as const
      const text = `${write(make, phrases)}\n${care.join(separators[n % 3])}`
      yield { text, blocks: told(make), iron: level }
      n++
    }
  }
  yield {
    text: `${shareFirst(makes[1]!, phrases)}\n${phrases.warm[0]}. ${phrases.print}.`,
    blocks: told(makes[1]!),
    iron: 'warm p',
  }
  yield {
    text: `${nameFirst(makes[0]!, phrases)}\n${noBleach}\n${phrases.print}`,
    blocks: told(makes[0]!),
    iron: ' p',
  }
  yield {
    text: `${byLines(makes[3]!, phrases)}\n${phrases.reverse}\n${noTumble}`,
    blocks: told(makes[3]!),
    iron: 'warm r',
  }
  yield {
    text: `${shareFirst(makes[5]!, phrases)}. ${phrases.noSteam}. ${noBleach}.`,
    blocks: told(makes[5]!),
    iron: 'cool s',
  }
  yield {
    text: `${shareFirst(makes[2]!, phrases)}\n${noBleach}. ${noTumble}.`,
    blocks: told(makes[2]!),
    iron: '',
  }
  yield {
    text: `${phrases.shell}: ${shareFirst(makes[1]!, phrases)}\n${phrases.lining}: ${shareFirst([['100', 1]], phrases)}\n${noBleach}\n${phrases.none[0]}`,
    blocks: `body: ${told(makes[1]!)} | lining: 100 polyester`,
    iron: 'none',
  }
  yield {
    text: `${phrases.shell.toUpperCase()}\n${byLines(makes[2]!, phrases)}\n${phrases.lining.toUpperCase()}\n${byLines([['100', 5]], phrases)}`,
    blocks: `body: ${told(makes[2]!)} | lining: 100 viscose`,
    iron: '',
  }
}

/** One make-up in three languages, each with its ironing line. */
function* togetherOf(turn: number): Generator<LabelCase> {
  const [a, b, c] = [0, 5, 10].map((step) => phrases[(turn + step) % phrases.length]!)
  const make = makes[turn % makes.length]!
  const parts = [a!, b!, c!]
  const texts = parts.map((part) => `${shareFirst(make, part)}\n${part.noBleach}. ${part.cool[0]}.`)
  yield { text: texts.join('\n'), blocks: told(make), iron: 'cool' }
  const shares = make.map(
    ([share, fibre]) => `${share}% ${parts.map(({ names }) => names[fibre]).join(' / ')}`,
  )
  yield {
    text: `${shares.join('\n')}\n${a!.none[0]}. ${b!.none[0]}.`,
    blocks: told(make),
    iron: 'none',
  }
}

export const composedLabels: readonly LabelCase[] = phrases.flatMap((words, turn) => [
  ...labelsOf(words, turn),
  ...togetherOf(turn),
])
