/**
 * Norris, a straight line through 36 points: Statistical Reference Datasets (StRD) of the National Institute of Standards
 * and Technology, certified values as printed: https://www.itl.nist.gov/div898/strd/ (US government work; read in the
 * copies that come with Math.NET Numerics and SciPy). It is the only set of a straight line with an intercept.
 */
export const norris = {
  xs: [
    0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777, 558.2, 0.4, 0.6, 775.5, 666.9, 338,
    447.5, 11.6, 556, 228.1, 995.8, 887.6, 120.2, 0.3, 0.3, 556.8, 339.1, 887.2, 999, 779, 11.1, 118.3, 229.2,
    669.1, 448.9, 0.5,
  ],
  ys: [
    0.1, 338.8, 118.1, 888, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3,
    448.9, 10.8, 557.7, 228.3, 998, 888.8, 119.6, 0.3, 0.6, 557.6, 339.3, 888, 998.5, 778.9, 10.2, 117.6,
    228.9, 668.4, 449.2, 0.2,
  ],
  intercept: '-0.262323073774029',
  interceptError: '0.232818234301152',
  slope: '1.00211681802045',
  slopeError: '0.429796848199937E-03',
  deviation: '0.884796396144373',
  explained: '0.999993745883712',
  ratio: '5436385.54079785',
} as const;
