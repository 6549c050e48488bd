import { inverse, Matrix, QrDecomposition, SingularValueDecomposition } from 'ml-matrix'

/** The only place that knows the library of matrices. A matrix is a list of its rows, all of one length. */
export type Rows = readonly (readonly number[])[]

/** Inverse of a square matrix. RangeError when it has none. */
export function inverseOf(rows: Rows): readonly (readonly number[])[] {
  try {
    return inverse(matrixOf(rows)).to2DArray()
  } catch {
    throw new RangeError(`this ${rows.length} by ${rows.length} matrix has no inverse`)
  }
}

/**
 * The x for which `rows` x comes nearest to `right`, by Householder's QR. RangeError with fewer rows than unknowns, and
 * when the rows leave x open.
 */
export function leastSquares(rows: Rows, right: readonly number[]): readonly number[] {
  const unknowns = rows[0]?.length ?? 0
  if (rows.length < unknowns || right.length !== rows.length) {
    throw new RangeError(`${unknowns} unknowns, ${rows.length} rows and ${right.length} right-hand figures`)
  }
  try {
    return new QrDecomposition(matrixOf(rows)).solve(Matrix.columnVector([...right])).to1DArray()
  } catch {
    throw new RangeError(`${rows.length} rows leave the ${unknowns} unknowns open`)
  }
}

/** The vector of length 1 that `rows` shortens most: the last right singular vector. Fewer rows than columns will do. */
export function mostShortened(rows: Rows): readonly number[] {
  const columns = rows[0]?.length ?? 0
  // The library gives as many vectors as the matrix has rows; rows of zeros change nothing but that.
  const missing = Array.from({ length: Math.max(0, columns - rows.length) }, () =>
    new Array<number>(columns).fill(0),
  )
  const { rightSingularVectors, diagonal } = new SingularValueDecomposition(matrixOf([...rows, ...missing]))
  return rightSingularVectors.getColumn(diagonal.indexOf(Math.min(...diagonal)))
}

function matrixOf(rows: Rows): Matrix {
  return new Matrix(rows.map((row) => [...row]))
}
