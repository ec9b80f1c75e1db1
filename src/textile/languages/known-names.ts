import { list } from './status.ts'

/**
 * Names of cloths and of makes of yarn, from memory: beside a fibre they say how it was worked, not
 * what it is.
 */
export const clothNames: readonly string[] = list(`
  denim | jersey | single jersey | flannel | fleece | twill | poplin | canvas | corduroy | velvet |
  terry | towelling | satin | knit | knitted | woven | preshrunk | pre shrunk | muslin | gauze |
  chambray | oxford | sateen | gabardine | chiffon | georgette | crepe | tulle | tweed | felt |
  boucle | voile | seersucker | pique | interlock | french terry | batiste | broadcloth | lawn |
  sweatshirt | tee | t shirt | jean | toile | flanelle | velours | popeline | maille | molleton |
  tricot | feutre | dentelle | mezclilla | vaquero | franela | terciopelo | pana | punto | popelina |
  felpa | Jeansstoff | Flanell | Samt | Cord | Popeline | Frottee | Strick | Gewirk | Köper | Filz |
  Sweat | Ringgesponnene | ringgesponnen | Mercerisierte | Jerseystoff | Flanella | velluto |
  popelin | maglina | jersey di cotone | ganga | veludo | flanela | malha | meia malha | sarja |
  moletom | flanel | fluweel | ribfluweel | tricotstof | badstof | keper | jeans | dżins | aksamit |
  sztruks | dzianina | polar | denimtyg | sammet | manchester | frotté | trikå | fløjl | frotte |
  catifea | fâș | tricotaj | samet | manšestr | úplet | plyš | kadife | kot | penye | süprem |
  pazen | interlok | 牛仔 | 牛仔布 | 灯芯绒 | 法兰绒 | 针织 | 平纹 | 斜纹 | デニム | フリース | ジャージー |
  ツイル | フランネル | コーデュロイ | ニット | 天竺 | 裏毛 | 데님 | 저지 | 플란넬 | 코듀로이 | 니트 | 벨벳
`)

/** Letters that name the language or the land of a line, as labels print them. */
export const landMarks: ReadonlySet<string> = new Set([
  'ae',
  'ar',
  'at',
  'au',
  'b',
  'be',
  'bg',
  'br',
  'by',
  'ca',
  'ch',
  'cn',
  'cs',
  'cz',
  'd',
  'da',
  'de',
  'dk',
  'e',
  'ee',
  'el',
  'en',
  'eng',
  'es',
  'est',
  'esp',
  'et',
  'eu',
  'f',
  'fi',
  'fin',
  'fr',
  'fra',
  'gb',
  'ger',
  'gr',
  'hr',
  'hu',
  'i',
  'ie',
  'il',
  'in',
  'ita',
  'it',
  'ja',
  'jp',
  'ko',
  'kor',
  'kr',
  'lt',
  'lv',
  'mx',
  'n',
  'ned',
  'nl',
  'nor',
  'no',
  'p',
  'pl',
  'pol',
  'por',
  'pt',
  'ro',
  'rom',
  'ru',
  'rus',
  's',
  'se',
  'sk',
  'si',
  'sl',
  'spa',
  'sv',
  'swe',
  'tr',
  'tur',
  'ua',
  'uk',
  'us',
  'usa',
  'zh',
  'xs',
  'xl',
  'xxl',
  'xxxl',
])

/** Words before the number of a size, as labels and tickets print them. */
export const sizeWords: readonly string[] = list(`
  size | sizes | sz | taille | t | talla | größe | groesse | gr | taglia | tg | tamanho | tam | maat
  | rozmiar | rozm | storlek | stl | størrelse | str | mărime | marime | mărimea | velikost | vel |
  beden | 尺码 | 尺寸 | サイズ | 사이즈 | 치수 | eu | uk | us | fr | de | it
`)

/** Words by which a cloth of several fibres is called: a single one of 100 % is no such cloth. */
export const mixtureWords: readonly string[] = list(`
  blend | blended | mix | mixed | mixture | mélange | mezcla | Mischung | Mischgewebe | Mix | misto |
  mista | mistura | mengsel | mieszanka | blandning | blanding | amestec | směs | karışım | karışımlı |
  混纺 | 混紡 | 혼방
`)

/** "The label says": words with which customers begin. */
export const leadIns: readonly string[] = list(`
  label | tag | reads | says | written | etiqueta | pone | dice | Etikett | Schild | steht |
  étiquette | écrit | etichetta | scritto | dice | etiqueta | diz | staat | metka | metce | jest |
  napisane | etiketten | står | mærket | mærke | etichetă | scrie | štítku | je | etikette | yazıyor |
  my | mi | mein | mijn | this | the
`)

/**
 * How words for ironing begin in languages whose labels are not read here, folded, from memory: Hungarian, Finnish,
 * Estonian, Lithuanian, Latvian, Croatian, Slovene, Greek, Russian, Ukrainian.
 */
export const ironStems: readonly string[] = list(`
  vasal | silit | triik | lyginti | gludin | glacat | glacan | peglat | likanje | likati | σιδερ | глад |
  глаж | утюж | прасув
`)
