/** JSON as text. */
export type Json = string

/** 0 or 1: what both stores can hold. */
export type Flag = 0 | 1
