/**
 * How a bent panel's edges turn. A sheet bent to curvature κ along its length wants to curve the other way across it,
 * by νκ. A long sheet cannot lift far off its cylinder without stretching, so across its width it behaves as a beam on
 * an elastic bed: w'''' + 4β⁴w = 0 with β⁴ = 3(1−ν²)·κ²/t² (Ashwell, The anticlastic curvature of rectangular beams
 * and plates, Journal of the Royal Aeronautical Society 54, 1950; the same bed as for the long cylinder in Timoshenko
 * and Woinowsky-Krieger, Theory of Plates and Shells; both from memory). Ashwell's edges are free; here the fixings
 * hold them down on the ribs: w = 0 and w'' = −νκ at both edges. The panel then bulges between its edges and they
 * slope outward, away from the focus.
 */

/** Poisson's ratio of thin board: from memory, 0.2 to 0.35 for wood-based board, card and metal. */
export const boardPoissonRatio = 0.3;
/** Half-width, in lengths 1/β, from which on a panel is as good as endless. */
const WIDE = 100;

/**
 * Slope across a panel, positive where the face falls away from the mid-line (radians).
 * @param curvature κ along the panel, 1/mm
 * @param thickness of the panel, mm
 * @param halfWidth from mid-line to edge, mm
 * @param w distance from the mid-line, 0 to halfWidth
 */
export function curlSlope(
  curvature: number,
  thickness: number,
  halfWidth: number,
  w: number,
  poissonRatio = boardPoissonRatio,
): number {
  if (curvature <= 0 || halfWidth <= 0 || thickness <= 0) return 0;
  const beta = Math.sqrt((Math.sqrt(3 * (1 - poissonRatio ** 2)) * curvature) / thickness);
  // beyond WIDE the edges no longer feel each other, and cosh² would leave the range of numbers
  const h = Math.min(beta * halfWidth, WIDE);
  const y = Math.max(0, h - beta * (halfWidth - w));
  // w = P·cosh·cos + Q·sinh·sin; w''/2β² = Q·cosh·cos − P·sinh·sin
  const [ch, sh, c, s] = [Math.cosh(h), Math.sinh(h), Math.cos(h), Math.sin(h)];
  const rhs = (-poissonRatio * curvature) / (2 * beta * beta);
  const determinant = (ch * c) ** 2 + (sh * s) ** 2;
  const p = (-rhs * sh * s) / determinant;
  const q = (rhs * ch * c) / determinant;
  const [chy, shy, cy, sy] = [Math.cosh(y), Math.sinh(y), Math.cos(y), Math.sin(y)];
  return -beta * (p * (shy * cy - chy * sy) + q * (chy * sy + shy * cy));
}
