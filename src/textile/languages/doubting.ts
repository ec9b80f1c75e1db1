import { list } from './status.ts'
import type { LabelWords, LanguageCode } from './types.ts'

/**
 * Words that make a make-up doubtful, in each language, from memory. `limits` stand beside a share
 * that is no exact one; `hedges` say that what is told is a guess, a slip just mended, or a likeness.
 */
export const doubtingWords: Readonly<
  Record<
    LanguageCode,
    Required<Pick<LabelWords, 'limits' | 'hedges' | 'likeness'>> & Pick<LabelWords, 'excluded'>
  >
> = {
  en: {
    likeness: list(`
      feels like | looks like | feel like | look like | feels just like | feel of | look of |
      reminds of | as soft as
    `),
    limits: list(`
      max | maximum | min | at least | minimum | minimum of | up to | less than | at most |
      no more than | not more than | not less than | no less than | more than | over | under |
      above | below | around | roughly | circa | ca | approx | approximately | about | between |
      nearly | close to
    `),
    hedges: list(`
      no wait | wait no | sorry | i mean | correction | oops | scratch that | my mistake |
      hopefully | apparently | supposedly | pretty sure | i assume | fairly sure |
      if i remember | from memory | not certain | hard to read | cannot read | can't read |
      unreadable | illegible | imitation | imitates | resembles | used to be | not really |
      mainly | iirc | if memory serves | unless i m wrong | i read | looks to be | more or less
    `),
  },
  fr: {
    likeness: list(`
      ressemble à | ça ressemble à | comme du | comme de la | aspect | toucher | effet
    `),
    limits: list(`
      max | maximum | maxi | min | mini | minimum | au moins | jusqu'à | au plus | au maximum |
      au minimum | plus de | moins de | pas moins de | pas plus de | environ | près de |
      autour de | entre | jusque
    `),
    hedges: list(`
      pardon | enfin | plutôt | je veux dire | erreur | correction | attendez | désolé |
      désolée | il me semble | imitation | pas sûr | pas sûre | peut être | apparemment |
      j'imagine | si je ne me trompe | de mémoire | sauf erreur | sans certitude | illisible |
      effacé | surtout | à peu près
    `),
  },
  es: {
    likeness: list('se parece a | parecido a | tacto | aspecto | efecto | como si fuera'),
    limits: list(`
      máx | máximo | mín | mínimo | al menos | por lo menos | hasta | como mínimo |
      como máximo | no más de | no menos de | más de | menos de | aprox | aproximadamente |
      cerca de | alrededor de | unos | entre
    `),
    hedges: list(`
      digo | perdón | mejor dicho | quiero decir | corrijo | espera | imitación | según creo |
      ilegible | borrado | borrosa | no recuerdo | si no me equivoco | si mal no recuerdo |
      a ojo | no se lee
    `),
  },
  de: {
    likeness: list('fühlt sich an wie | sieht aus wie | wirkt wie | Optik | weich wie'),
    limits: list(`
      max | maximal | min | bis zu | mind | minimal | höchstens | wenigstens | mindestens |
      nicht mehr als | nicht weniger als | über | unter | mehr als | weniger als | circa | ca |
      zirka | etwa | ungefähr | rund | zwischen | knapp | gut
    `),
    hedges: list(`
      nein | moment | sorry | ich meine | vielmehr | quatsch | korrektur | äh | Imitat |
      Imitation | eher | wohl | scheint | meiner meinung nach | anscheinend | angeblich |
      unleserlich | verblasst | hauptsächlich | möglicherweise | nicht sicher | keine Ahnung |
      wenn ich mich recht erinnere | soweit ich weiß | meine ich | schätze | geschätzt
    `),
  },
  it: {
    likeness: list('sembra | aspetto | morbido come | come se fosse'),
    limits: list(`
      max | massimo | min | minimo | almeno | fino a | fino al | al massimo | al minimo |
      non più di | non meno di | più di | meno di | circa | quasi | intorno a | tra
    `),
    hedges: list(`
      no aspetta | aspetta | scusa | scusi | anzi | cioè | volevo dire | correzione |
      mi sembra | imitazione | effetto | può darsi | suppongo | non sono sicuro |
      non sono sicura | illeggibile | sbiadito | credo sia | mi pare | se non sbaglio |
      se ricordo bene | più o meno
    `),
  },
  pt: {
    likeness: list('parece | efeito | toque de | aspecto | como se fosse'),
    limits: list(`
      máx | máximo | max | mín | min | mínimo | até | no máximo | no mínimo | pelo menos |
      mais de | menos de | não mais de | cerca de | aproximadamente | aprox | entre
    `),
    hedges: list(`
      espera | desculpa | desculpe | aliás | quer dizer | ou melhor | digo | correção | talvez |
      acho | acho que | penso | se não me engano | salvo erro | parece | imitação |
      provavelmente | não tenho certeza | quase | suponho | ilegível | apagado | se calhar |
      mais ou menos
    `),
  },
  nl: {
    likeness: list('voelt aan als | zacht als'),
    limits: list(`
      max | minimum | tot | maximaal | min | minimaal | minstens | hoogstens | ten minste |
      ten hoogste | niet meer dan | niet minder dan | meer dan | minder dan | circa | ca |
      ongeveer | rond | tussen | ruim | bijna
    `),
    hedges: list(`
      nee | sorry | ik bedoel | bedoel | wacht | misschien | denk ik | ik denk |
      waarschijnlijk | ik geloof | lijkt op | voelt als | imitatie | vermoedelijk | zou kunnen |
      niet zeker | onleesbaar | vervaagd | geen idee | als ik me niet vergis | meen ik | ik gok
    `),
  },
  pl: {
    likeness: list('wygląda jak | w dotyku jak | przypomina'),
    limits: list(`
      maks | max | min | maksymalnie | minimum | do | co najmniej | co najwyżej |
      nie więcej niż | nie mniej niż | ponad | poniżej | około | ok | mniej więcej | od |
      między | prawie
    `),
    hedges: list(`
      czekaj | przepraszam | to znaczy | znaczy | pomyłka | raczej | chyba | myślę |
      prawdopodobnie | wydaje mi się | imitacja | nie wiem | o ile pamiętam |
      jeśli się nie mylę | nie jestem pewna | nie jestem pewien | nieczytelne | wyblakłe |
      zapewne
    `),
  },
  sv: {
    likeness: list('påminner om | mjuk som'),
    limits: list(`
      max | min | minst | minimum | upp till | högst | minimalt | maximalt | inte mer än |
      mer än | mindre än | cirka | ca | ungefär | runt | mellan | drygt | knappt
    `),
    hedges: list(`
      nej | förlåt | jag menar | menar | vänta | ser ut som | känns som | imitation | osäker |
      förmodligen | antagligen | verkar | vet inte | har jag för mig | om jag minns rätt |
      vill jag minnas | oläslig | urblekt
    `),
  },
  da: {
    likeness: list('ser ud som | blød som'),
    limits: list(`
      maks | max | min | mindst | op til | højst | minimum | ikke mere end | ikke mindre end |
      mere end | mindre end | cirka | ca | omkring | mellem | knap | godt
    `),
    hedges: list(`
      nej | undskyld | jeg mener | mener | vent | ligner | føles som | imitation | usikker |
      sandsynligvis | formentlig | ved ikke | så vidt jeg husker | så vidt jeg ved |
      hvis jeg husker rigtigt | vist | ulæselig | falmet
    `),
  },
  ro: {
    likeness: list('pare | arată ca | moale ca'),
    limits: list(`
      max | maxim | min | minim | minimum | până la | cel puțin | cel mult | nu mai mult de |
      nu mai puțin de | peste | sub | aproximativ | aprox | circa | cam | în jur de | între
    `),
    hedges: list(`
      stai | scuze | vreau să zic | adică | ba nu | pardon | parcă | pare | imitație |
      seamănă cu | nu știu | din câte țin minte | dacă nu mă înșel | nu sunt sigur |
      nu sunt sigură | presupun | ilizibil | șters
    `),
  },
  cs: {
    likeness: list('na omak jako | připomíná | měkké jako'),
    limits: list(`
      max | maximálně | min | minimálně | až | do | alespoň | nejvýše | nejméně | ne více než |
      ne méně než | více než | méně než | přes | přibližně | asi | cca | okolo | kolem | mezi |
      zhruba
    `),
    hedges: list(`
      počkej | pardon | promiň | promiňte | vlastně | teda | tedy | chci říct | snad | zřejmě |
      vypadá jako | imitace | nevím | nejsem si jistá | nejsem si jistý | nečitelné | vybledlé |
      tuším | pokud si pamatuju | pokud si pamatuji | pokud se nepletu
    `),
  },
  tr: {
    likeness: list('gibi | görünümlü | dokunuşlu | hissi'),
    limits: list(`
      maks | max | min | en az | en fazla | en çok | yaklaşık | civarı | civarında | fazla |
      az | aşağı yukarı | arası | takriben
    `),
    hedges: list(`
      pardon | yani | aslında | daha doğrusu | değil | sanırım | galiba | belki | herhalde |
      taklit | görünümlü | emin değilim | bilmiyorum | yanılmıyorsam | hatırlıyorum |
      hatırladığım | muhtemelen | okunmuyor | neredeyse
    `),
  },
  zh: {
    excluded: list('不含 | 不含有'),
    likeness: list('看起来像 | 摸起来像 | 仿 | 手感像'),
    limits: list(`
      最多 | 最少 | 至少 | 不超过 | 不少于 | 不低于 | 不高于 | 大约 | 约 | 左右 | 以上 | 以下 | 大概 | 超过 | 上下
    `),
    hedges: list(`
      不对 | 不是 | 错了 | 应该是 | 更正 | 哦不 | 大概 | 好像 | 也许 | 我觉得 | 我想 | 估计 | 似乎 | 仿 | 看起来像 | 摸起来像 | 不确定 |
      不太确定 | 记得 | 没记错 | 看不清 | 应该 | 并非
    `),
  },
  ja: {
    likeness: list('のような | みたいな | 風 | 調'),
    limits: list(`
      最大 | 最小 | 最低 | 以上 | 以下 | 約 | およそ | 未満 | ほど | くらい | ぐらい | 程度 | 前後 | 少なくとも
    `),
    hedges: list(`
      いや | じゃなくて | ではなく | 間違い | 訂正 | すみません | やっぱり | らしい | みたい | 風 | 調 | ような | かもしれない | はず |
      でしょう | 思います | 不明 | 読めない | ではない | ではありません | じゃありません | じゃない | 気がする | だったと | 覚えて
    `),
  },
  ko: {
    likeness: list('같은 | 느낌의 | 처럼'),
    limits: list('최대 | 최소 | 이상 | 이하 | 약 | 정도 | 대략 | 미만 | 쯤 | 가량 | 내외 | 넘는'),
    hedges: list(`
      아니 | 아니라 | 아님 | 아닌 | 죄송 | 잘못 | 정정 | 느낌 | 듯 | 듯해요 | 인 것 같 | 모르겠 | 추정 | 기억 | 생각해요 | 확실하지
    `),
  },
}
