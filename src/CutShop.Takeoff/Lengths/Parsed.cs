namespace CutShop.Takeoff.Lengths;

/// <summary>What reading a text gave: a value, or in words what would have been accepted.</summary>
/// <typeparam name="T">The kind of value.</typeparam>
/// <param name="Value">The value; meaningless where there is a problem.</param>
/// <param name="Problem">What is wrong and what is accepted, or null where the value is good.</param>
public readonly record struct Parsed<T>(T Value, string? Problem)
{
    /// <summary>True where there is a value.</summary>
    public bool IsGood => Problem is null;

    /// <summary>The value.</summary>
    /// <exception cref="FormatException">There is none; the message says what is accepted.</exception>
    public T OrThrow() => Problem is null ? Value : throw new FormatException(Problem);
}

/// <summary>Makes <see cref="Parsed{T}"/> values.</summary>
public static class Parsed
{
    /// <summary>A good value.</summary>
    public static Parsed<T> Good<T>(T value) => new(value, null);

    /// <summary>No value, and why.</summary>
    public static Parsed<T> Bad<T>(string problem) => new(default!, problem);
}
