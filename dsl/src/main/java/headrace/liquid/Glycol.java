package headrace.liquid;

/**
 * The glycols that keep a circuit from freezing, with the coefficients of their mixtures with water.
 *
 * <p>A property is the sum of {@code C·(x − xm)^i·(t − tm)^j}, with the share of glycol {@code x} in per cent by mass
 * and the temperature {@code t} in °C; row i, column j. For the viscosity in mPa·s it is the logarithm. The freezing
 * point takes the first column alone.
 *
 * <p>Source: Melinder, Properties of Secondary Working Fluids for Indirect Systems, IIR 2010; the coefficients read in
 * the copy of an open library of properties.
 */
enum Glycol {
    /** Ethylene glycol in water. */
    ETHYLENE(
            "ethylene glycol",
            62.07,
            30.8462,
            31.728,
            new double[] {-15.25, -0.808, -0.01334, -7.293e-05, 1.006e-06, 1.14e-09},
            new double[][] {
                {1034, -0.4781, -0.002692, 4.725e-06},
                {1.311, -0.006876, 4.805e-05, 1.69e-08},
                {7.49e-05, 7.855e-05, -3.995e-07, 4.982e-09},
                {-0.0001062, 1.229e-06, -1.153e-08},
                {-9.623e-07, -7.211e-08},
                {4.891e-08}
            },
            new double[][] {
                {3737, 2.93, -0.004675, -1.389e-05},
                {-17.99, 0.1046, -0.0004147, 1.847e-07},
                {-0.09933, 0.0003516, 5.109e-06, -7.138e-08},
                {0.00261, -1.189e-06, -1.643e-07},
                {1.537e-05, -4.272e-07},
                {-1.618e-06}
            },
            new double[][] {
                {0.4705, -0.0255, 0.0001782, -7.669e-07},
                {0.02471, -0.0001171, 1.052e-06, -1.634e-08},
                {3.328e-06, 1.086e-06, 1.051e-08, -6.475e-10},
                {1.659e-06, 3.157e-09, 4.063e-10},
                {3.089e-08, 1.831e-10},
                {-1.865e-09}
            }),
    /** Propylene glycol in water. */
    PROPYLENE(
            "propylene glycol",
            76.09,
            30.7031,
            32.7083,
            new double[] {-13.25, -0.6631, -0.01094, -0.0002283, -3.409e-06, 1.465e-08},
            new double[][] {
                {1018, -0.5406, -0.002666, 1.347e-05},
                {0.7604, -0.00945, 5.541e-05, -1.343e-07},
                {-0.002498, 2.7e-05, -4.018e-07, 3.376e-09},
                {-0.000155, 2.829e-06, -7.175e-09},
                {-1.131e-06, -2.221e-08},
                {2.342e-08}
            },
            new double[][] {
                {3882, 2.699, -0.001659, -1.032e-05},
                {-13.04, 0.0507, -4.752e-05, 1.522e-06},
                {-0.1598, 9.534e-05, 1.167e-05, -4.87e-08},
                {0.0003539, 3.102e-05, -2.95e-07},
                {5e-05, -7.135e-07},
                {-4.959e-07}
            },
            new double[][] {
                {0.6837, -0.03045, 0.0002525, -1.399e-06},
                {0.03328, -0.0003984, 4.332e-06, -1.86e-08},
                {5.453e-05, -8.6e-08, -1.593e-08, -4.465e-11},
                {-3.9e-06, 1.054e-07, -1.589e-09},
                {-1.587e-08, 4.475e-10},
                {3.564e-09}
            });

    private final String words;
    private final double gramsPerMole;
    private final double middlePercent;
    private final double middleCelsius;
    private final double[] freezing;
    private final double[][] density;
    private final double[][] heatCapacity;
    private final double[][] logViscosity;

    Glycol(
            String words,
            double gramsPerMole,
            double middlePercent,
            double middleCelsius,
            double[] freezing,
            double[][] density,
            double[][] heatCapacity,
            double[][] logViscosity) {
        this.words = words;
        this.gramsPerMole = gramsPerMole;
        this.middlePercent = middlePercent;
        this.middleCelsius = middleCelsius;
        this.freezing = freezing;
        this.density = density;
        this.heatCapacity = heatCapacity;
        this.logViscosity = logViscosity;
    }

    String words() {
        return words;
    }

    double gramsPerMole() {
        return gramsPerMole;
    }

    double freezingCelsius(double percent) {
        return polynomial(freezing, percent - middlePercent);
    }

    double kilogramsPerCubicMetre(double percent, double celsius) {
        return sum(density, percent, celsius);
    }

    double joulesPerKilogramKelvin(double percent, double celsius) {
        return sum(heatCapacity, percent, celsius);
    }

    double pascalSeconds(double percent, double celsius) {
        return 1e-3 * Math.exp(sum(logViscosity, percent, celsius));
    }

    private double sum(double[][] coefficients, double percent, double celsius) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * (percent - middlePercent) + polynomial(coefficients[i], celsius - middleCelsius);
        }
        return sum;
    }

    private static double polynomial(double[] coefficients, double at) {
        double sum = 0;
        for (int i = coefficients.length - 1; i >= 0; i--) {
            sum = sum * at + coefficients[i];
        }
        return sum;
    }
}
