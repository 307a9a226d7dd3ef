/** Address of a stock-take. */
export const stockTakePath = (number: string) => `/stores/stock-takes/${encodeURIComponent(number)}`;
