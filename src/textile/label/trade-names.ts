import type { FibreKey } from '../fibres.ts'

/** Trade marks that labels print in place of a fibre's name, from memory. */
export const tradeNames: Readonly<Partial<Record<FibreKey, readonly string[]>>> = {
  elastane: [
    ...['lycra', 'elaspan', 'dorlastan', 'creora', 'roica', 'linel'],
    // The same mark as other languages spell it.
    ...['likra', '莱卡', '萊卡', 'ライクラ', '라이크라'],
  ],
  lyocell: ['tencel', 'tencel lyocell'],
  modal: ['tencel modal', 'micromodal', 'lenzing modal'],
  viscose: ['ecovero', 'lenzing viscose', 'lenzing ecovero'],
  polyester: ['coolmax', 'trevira', 'tergal', 'dacron', 'terylene', 'thermolite', 'diolen'],
  polyamide: ['perlon', 'tactel', 'meryl', 'cordura', 'dederon', 'supplex', 'lilion'],
  acrylic: ['dralon', 'orlon', 'courtelle', 'leacril', 'acrilan', 'dolan'],
  cupro: ['bemberg'],
  metallised: ['lurex'],
  aramid: ['kevlar', 'nomex'],
  polyethylene: ['dyneema'],
  chlorofibre: ['rhovyl'],
}
