package posterior

import (
	"math"
	"math/rand/v2"
	"slices"

	"foamfield/analysis/latent"
	"foamfield/analysis/leaning"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
)

// YesNo is a logistic line for a yes/no outcome.
type YesNo struct {
	X [][]float64
	Y []bool
	// Nearly is which noes were nearly a yes: closer to one than Band, in log odds where the line
	// is as steep as Prior. Nil where nobody tells them from the other noes.
	Nearly []bool
	Band   float64
	Prior  []Normal
	Signs  []Sign
	// LnSteepness is how many times as steep as Prior the line may be, in logarithms; the
	// zero value for once.
	LnSteepness Normal
	Quick       bool // as of a Line; the moments of all draws together are not worked out
}

// Sign is a combination of terms believed not to be negative, or hardly: the prior
// is multiplied by Φ(combination/Soft), which is smooth, so that Newton still climbs.
type Sign struct {
	Row  []float64
	Soft float64
}

// Sample returns what is believed of the line, averaged over how steep it may be.
func (y YesNo) Sample(rng *rand.Rand) (*YesNoPosterior, error) {
	nodes, _ := y.steepness()
	share := 1.0 // of the draws for each
	if len(nodes) > 1 {
		share = 0.5
	}
	each := make([]*Posterior, len(nodes))
	out := &YesNoPosterior{Edges: make([]Edge, len(nodes))}
	for k, z := range nodes {
		out.Edges[k].Steepness = math.Exp(y.LnSteepness.Mean + y.LnSteepness.SD*z)
		p, err := sample(newYesNoDensity(y.times(out.Edges[k].Steepness)), y.Quick, share, rng)
		if err != nil {
			return nil, err
		}
		each[k] = p
		out.Edges[k].Mean, out.Edges[k].Cov = p.Mean, p.Cov
		if !y.Quick {
			out.Edges[k].Leaning = p.leaning()
		}
	}
	believed := y.believed(out.Edges, each)
	for k, w := range believed {
		out.Edges[k].Weight = w
	}
	out.Posterior = mixture(each, believed)
	if len(each) > 1 && !y.Quick {
		out.moments()
	}
	return out, nil
}

// steepness is the points, standard normal, that stand for how steep the line may be.
func (y YesNo) steepness() (nodes, weights []float64) {
	if y.LnSteepness.SD > 0 {
		return hermite(SteepnessNodes)
	}
	return []float64{0}, []float64{1}
}

// believed is how much each steepness is believed, all together 1.
func (y YesNo) believed(edges []Edge, each []*Posterior) []float64 {
	_, out := y.steepness()
	for k, p := range each {
		// a prior so many times as wide is so many times as low, in every dimension
		out[k] = math.Log(out[k]) + p.evidence - float64(len(y.Prior))*math.Log(edges[k].Steepness)
	}
	all := floats.LogSumExp(out)
	for k := range out {
		out[k] = math.Exp(out[k] - all)
	}
	return out
}

// times is the same line with priors so many times as steep.
func (y YesNo) times(steep float64) YesNo {
	prior := make([]Normal, len(y.Prior))
	for i, n := range y.Prior {
		prior[i] = Normal{steep * n.Mean, steep * n.SD}
	}
	y.Prior = prior
	y.Band *= steep
	return y
}

// LogLik is of observation i at log odds eta, with its two derivatives. A line of three
// answers one after the other (proportional odds) comes apart into yes and no: nearly is a
// no that were a yes if it were easier by Band, and a plain no is none even then.
func (y YesNo) LogLik(i int, eta float64) (ll, d, dd float64) {
	if y.Nearly == nil || y.Y[i] {
		return latent.LogLikYesNo(y.Y[i], eta)
	}
	if !y.Nearly[i] {
		return latent.LogLikYesNo(false, eta+y.Band)
	}
	no, d, dd := latent.LogLikYesNo(false, eta)
	yes, e, ee := latent.LogLikYesNo(true, eta+y.Band)
	return no + yes + y.between(), d + e, dd + ee
}

// between is what makes the three shares add up to one.
func (y YesNo) between() float64 { return math.Log(-math.Expm1(-y.Band)) }

// SteepnessNodes is how many points integrate the steepness out.
const SteepnessNodes = 3

// YesNoPosterior is the belief about a yes/no line, ready to predict.
type YesNoPosterior struct {
	*Posterior
	Edges []Edge
}

// Edge is what is believed of the line if its prior is so many times as steep, and how
// much that is believed.
type Edge struct {
	Steepness, Weight float64
	Mean              []float64
	Cov               *mat.SymDense
	Leaning           leaning.Rows
}

// LogisticNodes is how many points integrate the line's uncertainty out.
const LogisticNodes = 9

var logisticX, logisticW = hermite(LogisticNodes)

// Yes is the predictive probability of a yes at these features.
func (y *YesNoPosterior) Yes(features []float64) float64 {
	p := 0.0
	for i := range y.Edges {
		e := &y.Edges[i]
		m, s := dot(features, e.Mean), math.Sqrt(math.Max(0, Form(features, e.Cov)))
		skew := leaning.Skewness(e.Leaning.Third(features), s)
		for k, x := range logisticX {
			p += e.Weight * logisticW[k] * logistic(m+s*leaning.Leans(x, skew))
		}
	}
	return p
}

// YesGiven is the share of yes if the parameters were draw.
func YesGiven(features, draw []float64) float64 { return logistic(dot(features, draw)) }

type yesNoDensity struct {
	YesNo
	x     *mat.Dense
	no    *mat.Dense // x, turned where the answer was yes: a no on it is what was seen
	near  *mat.Dense // the same of what else was seen of those that were nearly a yes, nil for none
	at    []int      // whose observation each of near is
	signs *mat.Dense // their rows over their softness
	lines lines
	close lines // near's own
	kept  lines // the signs' own
}

func newYesNoDensity(y YesNo) *yesNoDensity {
	rows := make([][]float64, len(y.Signs))
	for i, s := range y.Signs {
		rows[i] = slices.Clone(s.Row)
		floats.Scale(1/s.Soft, rows[i])
	}
	out := &yesNoDensity{YesNo: y, x: dense(y.X, len(y.Prior)), no: dense(y.X, len(y.Prior)), signs: dense(rows, len(y.Prior))}
	for k, yes := range y.Y {
		if yes {
			floats.Scale(-1, out.no.RawRowView(k))
		}
	}
	var near [][]float64
	for k, nearly := range y.Nearly {
		if nearly {
			row := slices.Clone(y.X[k])
			floats.Scale(-1, row)
			near, out.at = append(near, row), append(out.at, k)
		}
	}
	out.near = dense(near, len(y.Prior))
	return out
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

func (d *yesNoDensity) likelihood(theta, times []float64) (float64, []float64, *mat.SymDense) {
	p := len(d.Prior)
	grad := make([]float64, p)
	info := mat.NewSymDense(p, nil)
	raw := info.RawSymmetric().Data
	ll := 0.0
	for k := range d.Y {
		f := d.x.RawRowView(k)
		v, de, dee := d.LogLik(k, dot(f, theta))
		if times != nil {
			v, de, dee = times[k]*v, times[k]*de, times[k]*dee
		}
		ll += v
		for i, fi := range f {
			grad[i] += de * fi
			row := raw[i*p : (i+1)*p]
			for j := i; j < p; j++ {
				row[j] -= dee * fi * f[j]
			}
		}
	}
	return ll, grad, info
}

func (d *yesNoDensity) bends(centre []float64, cov *mat.SymDense) []float64 {
	out := make([]float64, len(d.Y))
	for k := range d.Y {
		f := d.x.RawRowView(k)
		eta, by := dot(f, centre), 2*math.Sqrt(Form(f, cov))
		v, de, dee := d.LogLik(k, eta)
		for _, by := range []float64{by, -by} {
			there, _, _ := d.LogLik(k, eta+by)
			out[k] += math.Abs(there - v - by*de - by*by*dee/2)
		}
	}
	return out
}

func (d *yesNoDensity) some(index []int) density {
	y := d.YesNo
	y.X, y.Y = pick(d.X, index), pick(d.Y, index)
	if d.Nearly != nil {
		y.Nearly = pick(d.Nearly, index)
	}
	return newYesNoDensity(y)
}

func (d *yesNoDensity) newton(theta []float64) (float64, []float64, *mat.SymDense) {
	p := len(d.Prior)
	ll, grad, info := d.likelihood(theta, nil)
	for i, prior := range d.Prior {
		z := (theta[i] - prior.Mean) / prior.SD
		ll -= z * z / 2
		grad[i] -= z / prior.SD
		info.SetSym(i, i, info.At(i, i)+1/(prior.SD*prior.SD))
	}
	for k := range d.Signs {
		s := &d.Signs[k]
		z := dot(d.signs.RawRowView(k), theta)
		v := logBelow(z)
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

func (d *yesNoDensity) batch(draws *mat.Dense, logDensity []float64, each *mat.Dense) {
	n, _ := draws.Dims()
	no, near, signs := d.lines.of(draws, d.no, each), d.close.of(draws, d.near, nil), d.kept.of(draws, d.signs, nil)
	for k := range n {
		sum := logNormals(draws.RawRowView(k), d.Prior)
		if signs != nil {
			for _, z := range signs.RawRowView(k) {
				sum += logBelow(z)
			}
		}
		if no != nil {
			row := no.RawRowView(k)
			d.easier(row)
			logNos(row)
			if near != nil {
				close := near.RawRowView(k)
				floats.AddConst(-d.Band, close)
				logNos(close)
				for i, v := range close {
					row[d.at[i]] += v + d.between()
				}
			}
			for _, v := range row {
				sum += v
			}
		}
		logDensity[k] = sum
	}
}

// easier moves the log odds of plain noes to where they would nearly have been a yes.
func (d *yesNoDensity) easier(eta []float64) {
	for i, nearly := range d.Nearly {
		if !nearly && !d.Y[i] {
			eta[i] += d.Band
		}
	}
}
