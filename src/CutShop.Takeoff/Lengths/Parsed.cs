using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Lengths;

/// <summary>What reading a text gave: a value, or what is wrong and what would have been accepted.</summary>
/// <typeparam name="T">The kind of value.</typeparam>
public readonly record struct Parsed<T>
{
    private readonly T _value;

    internal Parsed(T value, Sentence? reason) => (_value, Reason) = (value, reason);

    /// <summary>What is wrong and what is accepted, or null where there is a value.</summary>
    public Sentence? Reason { get; }

    /// <summary>The reason in English, or null where there is a value.</summary>
    public string? Problem => Reason?.ToString();

    /// <summary>True where there is a value.</summary>
    public bool IsGood => Reason is null;

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">There is a problem: ask <see cref="IsGood"/> first.</exception>
    public T Value => IsGood ? _value : throw new InvalidOperationException($"There is no value: {Problem}");

    /// <summary>The value.</summary>
    /// <exception cref="FormatException">There is none; the message says what is accepted.</exception>
    public T OrThrow() => IsGood ? _value : throw new FormatException(Problem);

    /// <summary>The value's text, or the reason.</summary>
    public override string ToString() => Problem ?? $"{_value}";
}

/// <summary>Makes <see cref="Parsed{T}"/> values.</summary>
public static class Parsed
{
    /// <summary>A good value.</summary>
    public static Parsed<T> Good<T>(T value) => new(value, reason: null);

    /// <summary>No value, and why.</summary>
    public static Parsed<T> Bad<T>(Sentence reason) => new(default!, reason);
}
