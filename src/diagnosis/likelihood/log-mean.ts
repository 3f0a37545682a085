/**
 * ln of the mean of numbers given by their logarithms, without overflow.
 *
 * @param logs at least one natural logarithm
 */
export function logMean(logs: readonly number[]): number {
  const top = Math.max(...logs);
  return top + Math.log(logs.reduce((sum, l) => sum + Math.exp(l - top), 0) / logs.length);
}
