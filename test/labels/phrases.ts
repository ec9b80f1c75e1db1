import type { LanguageCode } from '../../src/textile/languages/types.ts'
import type { IronLevel } from '../../src/textile/reading.ts'

/** Whole lines of care as labels print them, in the languages that are drawn. From memory. */
export interface Phrases {
  /** What stands before a block in this language, where one does. */
  readonly marks: readonly string[]
  readonly iron: Readonly<Record<IronLevel, readonly string[]>>
  readonly wash: readonly string[]
  readonly bleach: readonly string[]
  readonly dry: readonly string[]
  /** A country stands behind. */
  readonly madeIn: string
}

export type DrawnLanguage = Exclude<LanguageCode, 'zh' | 'ko'>

export const phrases: Readonly<Record<DrawnLanguage, Phrases>> = {
  en: {
    marks: ['EN', 'GB', 'US'],
    iron: {
      none: ['Do not iron', 'Never iron'],
      cool: ['Cool iron', 'Iron at low temperature', 'Cool iron if needed'],
      warm: ['Warm iron', 'Iron at medium temperature', 'Medium iron'],
      hot: ['Hot iron', 'Iron at high temperature'],
    },
    wash: ['Machine wash cold', 'Machine wash 30°C', 'Hand wash only', 'Wash with like colors'],
    bleach: ['Do not bleach', 'Only non-chlorine bleach when needed'],
    dry: ['Tumble dry low', 'Do not tumble dry', 'Line dry', 'Dry flat'],
    madeIn: 'Made in',
  },
  fr: {
    marks: ['FR', 'F'],
    iron: {
      none: ['Ne pas repasser'],
      cool: ['Repasser à basse température', 'Repassage doux'],
      warm: ['Repasser à température moyenne'],
      hot: ['Repasser à haute température', 'Fer chaud'],
    },
    wash: ['Laver à la machine à 30°C', 'Laver à la main'],
    bleach: ['Ne pas utiliser de javel', 'Pas de chlore'],
    dry: ['Ne pas sécher en machine', 'Sécher à plat'],
    madeIn: 'Fabriqué en',
  },
  es: {
    marks: ['ES', 'MX', 'E'],
    iron: {
      none: ['No planchar'],
      cool: ['Planchar a baja temperatura', 'Plancha tibia'],
      warm: ['Planchar a temperatura media', 'Plancha media'],
      hot: ['Planchar a alta temperatura', 'Plancha caliente'],
    },
    wash: ['Lavar a máquina en agua fría', 'Lavar a mano'],
    bleach: ['No usar blanqueador', 'No usar lejía'],
    dry: ['No secar en secadora', 'Secar en plano'],
    madeIn: 'Hecho en',
  },
  de: {
    marks: ['DE', 'D', 'AT'],
    iron: {
      none: ['Nicht bügeln'],
      cool: ['Bei niedriger Temperatur bügeln', 'Nicht heiß bügeln'],
      warm: ['Mäßig heiß bügeln', 'Bei mittlerer Temperatur bügeln'],
      hot: ['Heiß bügeln', 'Bei hoher Temperatur bügeln'],
    },
    wash: ['Maschinenwäsche 30°C', 'Handwäsche'],
    bleach: ['Nicht bleichen'],
    dry: ['Nicht im Trockner trocknen', 'Liegend trocknen'],
    madeIn: 'Hergestellt in',
  },
  it: {
    marks: ['IT', 'I'],
    iron: {
      none: ['Non stirare'],
      cool: ['Stirare a bassa temperatura'],
      warm: ['Stirare a media temperatura'],
      hot: ['Stirare ad alta temperatura'],
    },
    wash: ['Lavare in lavatrice a 30°C', 'Lavare a mano'],
    bleach: ['Non candeggiare'],
    dry: ['Non asciugare in asciugatrice'],
    madeIn: 'Prodotto in',
  },
  pt: {
    marks: ['PT', 'P', 'BR'],
    iron: {
      none: ['Não passar a ferro'],
      cool: ['Passar a ferro a baixa temperatura'],
      warm: ['Passar a ferro a temperatura média'],
      hot: ['Passar a ferro a alta temperatura'],
    },
    wash: ['Lavar à máquina a 30°C', 'Lavar à mão'],
    bleach: ['Não usar lixívia'],
    dry: ['Não secar na máquina'],
    madeIn: 'Feito em',
  },
  nl: {
    marks: ['NL', 'BE'],
    iron: {
      none: ['Niet strijken'],
      cool: ['Strijken op lage temperatuur'],
      warm: ['Strijken op gemiddelde temperatuur'],
      hot: ['Strijken op hoge temperatuur', 'Heet strijken'],
    },
    wash: ['Machinewas 30°C', 'Handwas'],
    bleach: ['Niet bleken'],
    dry: ['Niet in de droger', 'Liggend drogen'],
    madeIn: 'Gemaakt in',
  },
  pl: {
    marks: ['PL'],
    iron: {
      none: ['Nie prasować'],
      cool: ['Prasować w niskiej temperaturze'],
      warm: ['Prasować w średniej temperaturze'],
      hot: ['Prasować w wysokiej temperaturze'],
    },
    wash: ['Prać w temp. 30°C', 'Prać ręcznie'],
    bleach: ['Nie wybielać'],
    dry: ['Nie suszyć w suszarce bębnowej'],
    madeIn: 'Wyprodukowano w',
  },
  sv: {
    marks: ['SE', 'SV'],
    iron: {
      none: ['Får ej strykas'],
      cool: ['Stryk på låg värme'],
      warm: ['Stryk på medelvärme'],
      hot: ['Stryk på hög värme'],
    },
    wash: ['Maskintvätt 30°C', 'Handtvätt'],
    bleach: ['Tål ej blekning'],
    dry: ['Tål ej torktumling', 'Plantorkas'],
    madeIn: 'Tillverkad i',
  },
  da: {
    marks: ['DK', 'DA'],
    iron: {
      none: ['Må ikke stryges'],
      cool: ['Stryges ved lav temperatur'],
      warm: ['Stryges ved middel temperatur'],
      hot: ['Stryges ved høj temperatur'],
    },
    wash: ['Maskinvask 30°C', 'Håndvask'],
    bleach: ['Tåler ikke blegning'],
    dry: ['Tåler ikke tørretumbling'],
    madeIn: 'Fremstillet i',
  },
  ro: {
    marks: ['RO'],
    iron: {
      none: ['Nu se calcă'],
      cool: ['Se calcă la temperatură joasă'],
      warm: ['Se calcă la temperatură medie'],
      hot: ['Se calcă la temperatură înaltă'],
    },
    wash: ['Spălare la 30°C', 'Spălare manuală'],
    bleach: ['Nu folosiți înălbitor'],
    dry: ['Nu uscați în uscător'],
    madeIn: 'Fabricat în',
  },
  cs: {
    marks: ['CZ', 'CS'],
    iron: {
      none: ['Nežehlit'],
      cool: ['Žehlit při nízké teplotě'],
      warm: ['Žehlit při střední teplotě'],
      hot: ['Žehlit při vysoké teplotě'],
    },
    wash: ['Prát na 30°C', 'Ruční praní'],
    bleach: ['Nebělit'],
    dry: ['Nesušit v sušičce'],
    madeIn: 'Vyrobeno v',
  },
  tr: {
    marks: ['TR'],
    iron: {
      none: ['Ütülemeyiniz'],
      cool: ['Düşük ısıda ütüleyiniz'],
      warm: ['Orta ısıda ütüleyiniz'],
      hot: ['Yüksek ısıda ütüleyiniz'],
    },
    wash: ['30°C makinede yıkayınız', 'Elde yıkayınız'],
    bleach: ['Ağartıcı kullanmayınız'],
    dry: ['Kurutma makinesinde kurutmayınız'],
    madeIn: 'Üretim yeri',
  },
  ja: {
    marks: ['JP'],
    iron: {
      none: ['アイロン不可', 'アイロン禁止'],
      cool: ['アイロンは低温', '低温でアイロン'],
      warm: ['アイロンは中温', '中温でアイロン'],
      hot: ['アイロンは高温', '高温でアイロン'],
    },
    wash: ['手洗い', '洗濯機で水洗い'],
    bleach: ['漂白剤不可'],
    dry: ['日陰のつり干し', 'タンブル乾燥禁止'],
    madeIn: '原産国',
  },
}

export const countries = [
  'Portugal',
  'Bangladesh',
  'Vietnam',
  'Peru',
  'Italia',
  'India',
  'Honduras',
]
export const countriesInJapanese = ['ベトナム', '日本', 'ペルー']
