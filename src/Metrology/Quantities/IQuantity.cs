namespace Ramwright.Metrology.Quantities;

/// <summary>A physical quantity, held as one finite number in its coherent SI unit.</summary>
/// <remarks>
/// Sums, differences, scalings and comparisons are written once, in <see cref="QuantityArithmetic"/>;
/// a product of two quantities exists only where physics has one, beside the quantity it yields.
/// </remarks>
public interface IQuantity<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>The value in the coherent SI unit of the quantity (pascal, newton, metre, radian ...).</summary>
    double Si { get; }

    /// <summary>Wraps a finite value in the coherent SI unit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is NaN or infinite.</exception>
    static abstract TSelf FromSi(double value);
}

/// <summary>The arithmetic that all quantities share.</summary>
public static class QuantityArithmetic
{
    extension<T>(T)
        where T : struct, IQuantity<T>
    {
        public static T operator +(T a, T b) => T.FromSi(a.Si + b.Si);
        public static T operator -(T a, T b) => T.FromSi(a.Si - b.Si);
        public static T operator -(T a) => T.FromSi(-a.Si);
        public static T operator *(double factor, T a) => T.FromSi(factor * a.Si);
        public static T operator /(T a, double divisor) => T.FromSi(a.Si / divisor);
        public static double operator /(T a, T b) => a.Si / b.Si;
        public static bool operator <(T a, T b) => a.Si < b.Si;
        public static bool operator >(T a, T b) => a.Si > b.Si;
        public static bool operator <=(T a, T b) => a.Si <= b.Si;
        public static bool operator >=(T a, T b) => a.Si >= b.Si;
    }

    /// <summary>The value itself when finite, an <see cref="ArgumentOutOfRangeException"/> naming the unit when not.</summary>
    internal static double Finite(double value, string unit) => double.IsFinite(value)
        ? value
        : throw new ArgumentOutOfRangeException(nameof(value), value, $"A finite number of {unit} is wanted.");
}
