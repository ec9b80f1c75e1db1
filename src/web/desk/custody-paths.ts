/** The addresses of where things are. A subject goes by its key within its pile: "3", "3-L1", "P1". */
export const custodyPaths = {
  home: '/desk/custody',
  map: '/desk/custody/map',
  count: '/desk/count',
  pile: (number: number) => `/desk/piles/${number}/custody`,
  subject: (number: number, key: string) => `/desk/piles/${number}/custody/${key}`,
  parcels: (number: number) => `/desk/piles/${number}/parcels`,
  signOff: (number: number) => `/desk/piles/${number}/sign-off`,
  boxCheck: (number: number, parcel?: string) =>
    `/desk/piles/${number}/box-check${parcel ? `?parcel=${parcel}` : ''}`,
  /** What the bench writes down of a garment; `incident`: what staff decide of it. */
  record: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/record`,
  incident: (number: number, n: number) => `/desk/piles/${number}/garments/${n}/incident`,
  /** The laid-out quilt; `phone`: the customer's yes on the phone. */
  laidOut: (number: number) => `/desk/piles/${number}/laid-out`,
  laidOutPhone: (number: number) => `/desk/piles/${number}/laid-out/phone`,
  changed: (number: number) => `/desk/piles/${number}/box-check/changed`,
} as const
