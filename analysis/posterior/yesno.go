package posterior

import (
	"math"
	"math/rand/v2"

	"foamfield/analysis/latent"
	"gonum.org/v1/gonum/mat"
)

// YesNo is a logistic line for a yes/no outcome.
type YesNo struct {
	X     [][]float64
	Y     []bool
	Prior []Normal
	Signs []Sign
	Quick bool // half the draws, one round: a chance to 0.03 or so
}

// Sign is a combination of terms believed not to be negative, or hardly: the prior
// is multiplied by Φ(combination/Soft), which is smooth, so that Newton still climbs.
type Sign struct {
	Row  []float64
	Soft float64
}

// log is ln Φ(z) at z = row·theta/Soft.
func (s *Sign) log(theta []float64) (z, logp float64) {
	z = dot(s.Row, theta) / s.Soft
	if z > 7 { // Φ is 1 to 1e-12, and most draws keep most signs
		return z, 0
	}
	return z, logPhi(z)
}

// Sample returns what is believed of the line.
func (y YesNo) Sample(rng *rand.Rand) (*YesNoPosterior, error) {
	p, err := sample(&yesNoDensity{YesNo: y, x: dense(y.X, len(y.Prior))}, y.Quick, rng)
	if err != nil {
		return nil, err
	}
	return &YesNoPosterior{p}, nil
}

// YesNoPosterior is the belief about a yes/no line, ready to predict.
type YesNoPosterior struct{ *Posterior }

// logisticNodes is how many points integrate the line's uncertainty out.
const logisticNodes = 9

var logisticX, logisticW = hermite(logisticNodes)

// Yes is the predictive probability of a yes at these features.
func (y *YesNoPosterior) Yes(features []float64) float64 {
	m, s := dot(features, y.Mean), math.Sqrt(math.Max(0, Form(features, y.Cov)))
	p := 0.0
	for k, x := range logisticX {
		p += logisticW[k] * logistic(m+s*x)
	}
	return p
}

// YesGiven is the share of yes if the parameters were draw.
func YesGiven(features, draw []float64) float64 { return logistic(dot(features, draw)) }

func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

type yesNoDensity struct {
	YesNo
	x *mat.Dense
}

func (d *yesNoDensity) size() int         { return len(d.Prior) }
func (d *yesNoDensity) observations() int { return len(d.Y) }
func (d *yesNoDensity) start() []float64 {
	t := make([]float64, len(d.Prior))
	for i, p := range d.Prior {
		t[i] = p.Mean
	}
	return t
}

func (d *yesNoDensity) newton(theta []float64) (float64, []float64, *mat.SymDense) {
	p := len(d.Prior)
	grad := make([]float64, p)
	info := mat.NewSymDense(p, nil)
	ll := 0.0
	for k, yes := range d.Y {
		f := d.x.RawRowView(k)
		v, de, dee := latent.LogLikYesNo(yes, dot(f, theta))
		ll += v
		for i := range p {
			grad[i] += de * f[i]
			for j := i; j < p; j++ {
				info.SetSym(i, j, info.At(i, j)-dee*f[i]*f[j])
			}
		}
	}
	for i, prior := range d.Prior {
		z := (theta[i] - prior.Mean) / prior.SD
		ll -= z * z / 2
		grad[i] -= z / prior.SD
		info.SetSym(i, i, info.At(i, i)+1/(prior.SD*prior.SD))
	}
	for k := range d.Signs {
		s := &d.Signs[k]
		z, v := s.log(theta)
		ll += v
		ratio := math.Exp(-z*z/2-v) / math.Sqrt(2*math.Pi) // φ(z)/Φ(z)
		bend := ratio * (z + ratio)
		for i := range p {
			grad[i] += ratio * s.Row[i] / s.Soft
			for j := i; j < p; j++ {
				info.SetSym(i, j, info.At(i, j)+bend*s.Row[i]*s.Row[j]/(s.Soft*s.Soft))
			}
		}
	}
	return ll, grad, info
}

func (d *yesNoDensity) batch(draws *mat.Dense, logPrior []float64, loglik *mat.Dense) {
	n, _ := draws.Dims()
	if len(d.Y) > 0 {
		loglik.Mul(draws, d.x.T())
	}
	for k := range n {
		theta := draws.RawRowView(k)
		logPrior[k] = logNormals(theta, d.Prior)
		for i := range d.Signs {
			_, v := d.Signs[i].log(theta)
			logPrior[k] += v
		}
		row := loglik.RawRowView(k)
		for i, yes := range d.Y {
			eta := row[i]
			if yes {
				eta = -eta
			}
			// -ln(1 + e^eta), without overflow
			row[i] = -math.Max(eta, 0) - math.Log1p(math.Exp(-math.Abs(eta)))
		}
	}
}
