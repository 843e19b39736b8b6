package heat

// tridiagonal is a matrix with three diagonals, taken apart once and used for
// many right-hand sides (Thomas's algorithm: Gauss without exchange of rows,
// stable where each diagonal outweighs its row, as in heat conduction). Row i
// is lower[i] x[i−1] + diag[i] x[i] + upper[i] x[i+1]; lower[0] and the last
// upper are unused.
type tridiagonal struct {
	lower, diag, upper []float64
	inverse, ratio     []float64 // of the elimination
}

func newTridiagonal(n int) tridiagonal {
	all := make([]float64, 5*n)
	return tridiagonal{all[:n:n], all[n : 2*n : 2*n], all[2*n : 3*n : 3*n], all[3*n : 4*n : 4*n], all[4*n:]}
}

// factor takes the matrix apart.
func (m *tridiagonal) factor() {
	n := len(m.diag)
	lower, diag, upper, inverse, ratio := m.lower[:n], m.diag[:n], m.upper[:n], m.inverse[:n], m.ratio[:n]
	inverse[0] = 1 / diag[0]
	for i := 1; i < n; i++ {
		ratio[i-1] = upper[i-1] * inverse[i-1]
		inverse[i] = 1 / (diag[i] - lower[i]*ratio[i-1])
	}
}

// solve turns the right-hand side x into the solution, in place.
func (m *tridiagonal) solve(x []float64) {
	n := len(m.diag)
	lower, inverse, ratio := m.lower[:n], m.inverse[:n], m.ratio[:n]
	x = x[:n]
	x[0] *= inverse[0]
	for i := 1; i < n; i++ {
		x[i] = (x[i] - lower[i]*x[i-1]) * inverse[i]
	}
	for i := n - 2; i >= 0; i-- {
		x[i] -= ratio[i] * x[i+1]
	}
}
