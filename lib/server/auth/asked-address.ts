/** Header of a request in which proxy.ts tells a page its own address. */
export const ADDRESS_HEADER = 'x-hilum-address';
