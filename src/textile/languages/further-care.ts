import { list } from './status.ts'
import type { CareWords, LanguageCode } from './types.ts'

/**
 * Wording of care that is rarer on labels, or that customers type, added to each language's own, from
 * memory. `than` compares: "not hotter than warm" sets a limit.
 */
export const furtherCare: Readonly<Record<LanguageCode, Partial<CareWords>>> = {
  en: {
    notAfter: list('is not recommended | not advised | is not advised | is not advisable'),
    not: list(
      'neither | nor | keep away from | never ever | not suitable for | unsuitable for | do not recommend',
    ),
    than: list(
      'hotter than | warmer than | higher than | more than | above | over | exceed | exceeding',
    ),
    cool: list(
      'not too hot | not very hot | tepid | coolest | lowest heat | lowest temperature | barely warm | lukewarm',
    ),
    warm: list('middle setting | mid | mid heat | middle heat | medium setting | medium dot'),
    hot: list('hottest | max heat | highest setting | very hot | high setting'),
    except: list('keep off | stay off | skip | steer clear of | leave out'),
    fillers: list(
      'when dry | once dry | until dry | completely dry | face down | down | thru | out | cotton cloth | tea towel | towel | a cloth',
    ),
    ironFree: list('iron content | iron oxide | iron on patch | iron on transfer | cast iron'),
  },
  fr: {
    notAfter: list('déconseillée | pas recommandé | non recommandé | à éviter | à bannir'),
    not: list('ni | jamais de | ne supporte pas | ne supporte pas le | il est déconseillé de'),
    than: list('plus chaud que | plus chaud qu | plus de | au-delà de | dépasser | supérieure à'),
    cool: list(
      'pas trop chaud | pas trop chaude | la plus basse | plus basse | minimale | à peine chaud | tout doux',
    ),
    warm: list('intermédiaire | mi chaud | mi chaude'),
    hot: list('la plus haute | plus élevée | maximale | brûlant'),
    fillers: list('à travers | travers | torchon | mouchoir'),
  },
  es: {
    notAfter: list('no se recomienda | desaconsejado | no aconsejado | no apto'),
    not: list(
      'ni | jamás | tampoco | no apto para | no apta para | no se recomienda | no se aconseja | no admite',
    ),
    than: list('más caliente que | más de | por encima de | superior a | exceder | mayor a'),
    cool: list(
      'no muy caliente | no demasiado caliente | la más baja | más baja | apenas caliente | apenas tibia',
    ),
    warm: list('intermedia | intermedio | media alta'),
    hot: list('la más alta | más alta | bien caliente'),
    fillers: list('a través de | través | trapo húmedo | toalla'),
  },
  de: {
    notAfter: list(
      'nicht empfohlen | nicht ratsam | ungeeignet | wird nicht empfohlen | nicht zu empfehlen | zu vermeiden',
    ),
    not: list('weder | nicht zum | ungeeignet zum'),
    than: list('heißer als | wärmer als | mehr als | höher als | über'),
    cool: list('kleinste | niedrigste | niedrigster Stufe | kleinster Stufe | handwarm'),
    warm: list('mittelste | mittleren | mittlerem | halbwarm | mittlerer Stufe'),
    hot: list('höchste | heißester | größter Hitze | hoher Stufe'),
    fillers: list('durch | Geschirrtuch | Handtuch | mit einem Tuch'),
  },
  it: {
    iron: list('stiro'),
    notAfter: list(
      'non è consigliata | non è consigliato | sconsigliata | sconsigliato | non consigliata | non consentita | non è consentita | non è consentito | da evitare',
    ),
    not: list('né | mai | non adatto a | non adatto alla | si sconsiglia | sconsigliata la'),
    than: list(
      'più caldo di | più caldo che | più di | oltre | oltre i | superiore a | superiori a',
    ),
    cool: list('non troppo caldo | non troppo calda | la più bassa | più bassa | al minimo'),
    warm: list('intermedia | intermedio | medio bassa'),
    hot: list('la più alta | più alta | molto caldo | rovente'),
    fillers: list('a secco | attraverso | strofinaccio | asciugamano'),
  },
  pt: {
    notAfter: list(
      'não recomendado | desaconselhado | não recomendada | não é recomendado | a evitar',
    ),
    not: list(
      'nem | jamais | não apto para | não se recomenda | não é recomendado | não deve ser | não admite',
    ),
    than: list('mais quente que | mais quente do que | mais de | acima de | superior a | exceder'),
    cool: list(
      'não muito quente | não demasiado quente | a mais baixa | mais baixa | pouco quente',
    ),
    warm: list('intermédia | intermediária | intermédio'),
    hot: list('a mais alta | mais alta | bem quente'),
    fillers: list('através de | pano úmido | toalha'),
  },
  nl: {
    notAfter: list('niet aanbevolen | afgeraden | wordt afgeraden | niet aan te raden'),
    not: list('noch | nimmer | niet geschikt voor | ongeschikt voor | niet geschikt om te'),
    than: list('heter dan | warmer dan | meer dan | hoger dan | boven'),
    cool: list('niet te heet | niet te warm | laagste | laagste stand | handwarm'),
    warm: list('middelste | middelste stand | halfwarm | middelmatig'),
    hot: list('hoogste | hoogste stand | heel heet'),
    fillers: list('door | theedoek | handdoek'),
  },
  pl: {
    notAfter: list('niewskazane | niezalecane | nie jest zalecane | nie zaleca się | odradzane'),
    not: list('ani | nie zaleca się | nie nadaje się do | odradza się'),
    than: list(
      'cieplejszym niż | gorętszym niż | goręcej niż | cieplej niż | więcej niż | powyżej',
    ),
    cool: list(
      'niezbyt gorącym | nie za gorącym | najniższej | najniższa | najniższym | ledwo ciepłym',
    ),
    warm: list('pośredniej | średnim ustawieniu'),
    hot: list('najwyższej | najwyższa | najwyższym | bardzo gorącym'),
    fillers: list('ręcznik | ścierkę'),
  },
  sv: {
    notAfter: list('rekommenderas inte | rekommenderas ej | avråds | bör undvikas | olämplig'),
    not: list('varken | lämpar sig inte för | rekommenderas inte att'),
    than: list('varmare än | hetare än | högre än | mer än | över'),
    cool: list('inte för varmt | inte för hett | lägsta | lägsta värme | handvarmt | handvarm'),
    warm: list('mellersta | mellanvärme'),
    hot: list('högsta | högsta värme | jättevarmt'),
    fillers: list('handduk | kökshandduk'),
  },
  da: {
    notAfter: list('anbefales ikke | kan ikke anbefales | bør undgås'),
    not: list('hverken | egner sig ikke til'),
    than: list('varmere end | højere end | mere end | over'),
    cool: list('ikke for varmt | ikke for varm | laveste | laveste varme | håndvarmt'),
    warm: list('mellemste | mellemste trin'),
    hot: list('højeste | højeste varme | meget varm'),
    fillers: list('viskestykke | håndklæde'),
  },
  ro: {
    notAfter: list('nu se recomandă | nerecomandată | nerecomandat | de evitat'),
    not: list('nici | nu se recomandă | nu este potrivit pentru | nu suportă'),
    than: list('mai fierbinte de | mai fierbinte decât | mai cald de | mai mult de | peste'),
    cool: list('nu prea fierbinte | cea mai joasă | cea mai mică | abia cald'),
    warm: list('intermediară | de mijloc'),
    hot: list('cea mai ridicată | cea mai mare | cea mai înaltă'),
    fillers: list('prin | printr | prin pânză | prosop | lavetă'),
  },
  cs: {
    notAfter: list('nedoporučuje | nedoporučeno | nevhodné | se nedoporučuje'),
    not: list('ani | nedoporučuje se | nevhodné pro | nedoporučujeme'),
    than: list('tepleji než | teplejší než | více než | víc než | nad | přes'),
    cool: list('ne příliš horkou | nejnižší | nejnižším | sotva teplou'),
    warm: list('prostřední | na prostřední'),
    hot: list('nejvyšší | nejvyšším | rozpálenou'),
    fillers: list('utěrku | ručník | přes utěrku | stupeň | stupně'),
  },
  tr: {
    notAfter: list('önerilmez | tavsiye edilmez | uygun değildir | uygun değil | uygun değildir'),
    not: list('asla | uygun olmayan'),
    than: list('daha sıcak | daha yüksek | üzerinde | üstünde'),
    cool: list('çok sıcak olmayan | en düşük | en düşük ısıda | en düşük ayarda'),
    warm: list('orta ayarda | orta kademede'),
    hot: list('en yüksek | en yüksek ısıda | çok sıcak'),
    fillers: list('havlu | bez üzerinden'),
  },
  zh: {
    notAfter: list('不建议 | 不推荐'),
    not: list('不建议 | 不宜 | 不适合 | 不推荐'),
    than: list('高于 | 超过'),
    cool: list('不宜过热 | 不要过热 | 不要太热 | 最低温 | 最低温度 | 低档 | 最低档'),
    warm: list('中档 | 中等温度 | 中等'),
    hot: list('最高温 | 高档 | 最高档'),
    fillers: list('毛巾 | 湿布'),
  },
  ja: {
    notAfter: list('おすすめしません | お勧めしません | 適しません | 向きません | 推奨しません'),
    wash: list('洗って | 洗濯して | 洗ってください | 洗って下さい | お洗濯 | 洗えます | 洗い上げ'),
    cool: list('熱すぎないように | 熱すぎない | 熱くない | 一番低い温度 | 最低温度 | 弱設定'),
    warm: list('中間の温度 | 中設定'),
    hot: list('一番高い温度 | 強設定'),
    fillers: list('タオル | 薄い布'),
  },
  ko: {
    notAfter: list(
      '권장하지 않습니다 | 권장하지 않음 | 적합하지 않습니다 | 적합하지 않음 | 비추천',
    ),
    wash: list('빨아 | 빨아주세요 | 빨아 주세요 | 빨래 | 세탁해 | 세탁해주세요 | 빨고 | 세탁하고'),
    cool: list('너무 뜨겁지 않게 | 뜨겁지 않은 | 가장 낮은 온도 | 제일 낮은 온도 | 약불'),
    warm: list('중간 단계 | 중간단계'),
    hot: list('가장 높은 온도 | 제일 높은 온도'),
    fillers: list('수건 | 젖은 천'),
  },
}
