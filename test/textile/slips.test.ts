import { expect, test } from 'vitest'
import { linesWithoutSlips, withoutSlips } from '../../src/textile/label/slips.ts'

// Left: as the reader of pictures gave it for a drawn label; right: what the label says.
test.each([
  ['85X COTTON', '85% COTTON'],
  ['EN Cotton 10ox', 'EN Cotton 100%'],
  ['11 9%6 Viskose', '11% Viskose'],
  ['70 9% VISCOSE 26 % POLYESTER', '70% VISCOSE 26 % POLYESTER'],
  ['Polyester 75 96', 'Polyester 75%'],
  ['Polyester 2%6', 'Polyester 2%'],
  ['859% Pamut 13%', '85% Pamut 13%'],
  ['196 ELASTHAN', '1% ELASTHAN'],
  ['Viskos 9596 - Elastan 596', 'Viskos 95% - Elastan 5%'],
  ['Never lron', 'Never iron'],
  ['Jron At High Temperature', 'iron At High Temperature'],
  ['TUNBLE DRY', 'tumble DRY'],
  ['#ACHINE WASH', 'machine WASH'],
  ['AuBenmaterial', 'Aussenmaterial'],
  ['MaBig HeiB Bugeln', 'Massig Heiss Bugeln'],
  ['Nicht Heiβ Bugeln', 'Nicht Heiss Bugeln'],
  ['8S% POLIESTER', '85% POLIESTER'],
  ['1C0% POLYAMID', '100% POLYAMID'],
  ['75x lyocell 1ox cotton', '75% lyocell 10% cotton'],
  ['SX LYOCELL', '5% LYOCELL'],
  ['NEVER RON', 'NEVER iron'],
  ['iryn at low', 'iron at low'],
  ['IRONAT HIGH', 'IRON AT HIGH'],
  ['PLANCHARA', 'PLANCHAR A'],
  ['PASSARA FERRO', 'PASSAR A FERRO'],
  ['cooi iren', 'cool iron'],
  ['cool iren', 'cool iron'],
  ['No Planhar', 'No planchar'],
  ['laver a la maschine', 'laver a la machine'],
  ['TAL EJ TORKTUMLNG', 'TAL EJ torktumling'],
  ['ACry1 100%', 'ACryl 100%'],
  ['SE Bo#ull', 'SE Bomull'],
  ['MACHINEWAS 30%C', 'MACHINEWAS 30°C'],
  ['20 % CFF', '20 % OFF'],
  ['35% 6 Rayon', '35% Rayon'],
  ['LAVER A 30°℃', 'LAVER A 30°C'],
  ['HOT T IRON', 'HOT IRON'],
  ['Machine ash 30°C', 'Machine wash 30°C'],
  ['Susicce Zehlit Pi', 'Susicce Zehlit pri'],
  ['L.INNEN 99%', 'LINNEN 99%'],
  ['9996 COTTON. 196', '99% COTTON. 1%'],
  ['Stryk P& Hog', 'Stryk På Hog'],
  ['Nicht heis bugeln', 'Nicht heiss bugeln'],
  ['Hergestellt lIn', 'Hergestellt In'],
  ['MA CHINE WASH', 'MACHINE WASH'],
  ['60 % AL GODAO', '60 % ALGODAO'],
  ['Y dermateriale:', 'Ydermateriale:'],
  ['Cotton 10096', 'Cotton 100%'],
  ['Svrchni Materiall', 'Svrchni Material/'],
  ['YTTERMATERIALI', 'YTTERMATERIAL/'],
  ['15 % POL IAMIDA', '15 % POLIAMIDA'],
  ['Otalemeyiniz', 'utulemeyiniz'],
  ['CS 1e6% Polyester', 'CS 100% Polyester'],
  ['EN 1o9% Polyester', 'EN 100% Polyester'],
  ['Wool/Lana 8596', 'Wool/Lana 85%'],
  ['LANA 1796', 'LANA 17%'],
  ['Coiors. Warin Iron', 'Coiors. warm Iron'],
  ['iron at high temperalnre', 'iron at high temperature'],
  ['Passar A Ferrc A Alta', 'Passar A ferro A Alta'],
  ['polyainide 7%', 'polyamide 7%'],
  ['ytter.', 'ytter:'],
  ['interieur.', 'interieur:'],
  ['Bcdy.', 'Bcdy:'],
])('%s was %s', (read, said) => {
  expect(withoutSlips(read)).toBe(said)
})

test.each([
  '79% viscose - 15% polyester',
  '96% Cotton, 4% Elastane',
  '9% Silk',
  'SIZE M 40',
  '20 % OFF',
  'Do not iron',
  'Lavare a 30°C',
  '60% Baumwolle 40% Polyester',
  'Made in Peru',
  '3.3 % Elastane 96.7 % Wool',
  'STYLE 47874-70',
  '30 % C',
  'En lin',
  'Wolle.Leinen',
  'L.cotton 60%',
  'A material',
  'Lavare a mano',
  'Outer shell',
  'Ferro.',
  'Body temperature.',
  'Planchar a baja',
  'Plancha a alta temperatura',
  '35% 6.5 cm',
  'No iron',
  'Hand wash only',
  'Utuleyemiz',
])('%s is as it was', (line) => {
  expect(withoutSlips(line)).toBe(line)
})

test('a word is never taken for one that a single letter makes hot', () => {
  expect(withoutSlips('NOT')).toBe('NOT')
  expect(withoutSlips('do nct iron')).toBe('do nct iron')
  // One letter more or less of these forbids the iron or gives leave.
  for (const word of ['nzehlit', 'ezehlit', 'utulemyiniz', 'utuleeyiniz'])
    expect(withoutSlips(word)).toBe(word)
})

test('a whole with its sign read as digits is a whole', () => {
  expect(withoutSlips('10096 cashmere')).toBe('100% cashmere')
  expect(withoutSlips('STYLE 10096')).toBe('STYLE 10096')
})

test('a dot within what is no two words is a speck', () => {
  expect(withoutSlips('100 co.cna')).toBe('100 cocna')
  expect(withoutSlips('DO NOT BLEACH.IRON LOW')).toBe('DO NOT BLEACH.IRON LOW')
})

test.each([
  [
    ['Iron At Medium Semperat-', 'ure'],
    ['Iron At Medium temperature', ''],
  ],
  [
    ['SE CALCA LA TFMPER-', 'ATURA JOASA'],
    ['SE CALCA LA temperatura', 'JOASA'],
  ],
  [
    ['IRON AT LOW TEMPERA.', 'TURE'],
    ['IRON AT LOW TEMPERATURE', ''],
  ],
  [
    ['DO NOT BLEACH.', 'IRON'],
    ['DO NOT BLEACH.', 'IRON'],
  ],
  // Read as it stands, or no word at all.
  [
    ['Stryges Ved Tempe-', 'ratur'],
    ['Stryges Ved Tempe-', 'ratur'],
  ],
  [
    ['60% POL-', 'IESTERE'],
    ['60% POL-', 'IESTERE'],
  ],
  [['LOT 34-'], ['LOT 34-']],
])('%j over two lines was %j', (read, said) => {
  expect(linesWithoutSlips(read)).toEqual(said)
})
