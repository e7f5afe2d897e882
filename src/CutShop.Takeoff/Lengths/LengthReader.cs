using System.Globalization;

namespace CutShop.Takeoff.Lengths;

/// <summary>The units a length may be written in.</summary>
internal enum LengthUnit
{
    Inch,
    Foot,
    Millimetre,
    Centimetre,
    Metre,
}

/// <summary>A number with its unit, in nanometres that need not be whole yet.</summary>
internal readonly record struct Measure(decimal Nanometres, LengthUnit Unit, bool IsWhole);

/// <summary>Walks once over a length's text; every step takes what it can and leaves the rest.</summary>
internal sealed class LengthReader(string text)
{
    /// <summary>Digits that fit a decimal with room for the unit's factor, and enough for any length in millimetres to the nanometre.</summary>
    private const int MostDigits = 19;

    private int _at;
    private string? _problem;

    /// <summary>True where nothing but spaces is left.</summary>
    public bool AtEnd
    {
        get
        {
            SkipSpaces();
            return _at == text.Length;
        }
    }

    /// <summary>Why the last step failed, or that the rest was not understood.</summary>
    public string Problem(string accepted) =>
        _problem is not null ? $"{_problem}; accepted: {accepted}"
        : AtEnd ? $"unfinished; accepted: {accepted}"
        : $"'{OneLine.Of(text[_at..].Trim())}' is not understood; accepted: {accepted}";

    /// <summary>Takes one character if it is next.</summary>
    public bool Take(char wanted)
    {
        if (AtEnd || text[_at] != wanted)
            return false;
        _at++;
        return true;
    }

    /// <summary>Reads <c>5</c>, <c>5.25</c>, <c>3/8</c> or <c>5 3/8</c> and its unit; null, with a problem noted, where it is not that.</summary>
    /// <param name="units">The unit words.</param>
    /// <param name="bareUnit">The unit of a number that has none, or null where it must have one.</param>
    public Measure? ReadMeasure(Dictionary<string, LengthUnit> units, LengthUnit? bareUnit = null)
    {
        if (ReadNumber() is not { } number)
            return null;
        var numerator = 0;
        var denominator = 1;
        if (NextIs('/'))
        {
            // The number read was the numerator.
            if (!number.IsPlainInteger || ReadDenominator(number.Value) is not { } lower)
                return Fail("a fraction of an inch is a proper one in halves, quarters, eighths, 16ths, 32nds or 64ths");
            (numerator, denominator, number) = ((int)number.Value, lower, default);
        }
        else if (number.IsPlainInteger && NextIsDigit())
        {
            if (ReadNumber() is not { IsPlainInteger: true } upper || !NextIs('/') || ReadDenominator(upper.Value) is not { } lower)
                return Fail("a fraction of an inch is a proper one in halves, quarters, eighths, 16ths, 32nds or 64ths");
            (numerator, denominator) = ((int)upper.Value, lower);
        }

        if ((AtEnd && bareUnit is not null ? bareUnit : ReadUnit(units)) is not { } unit)
            return null;
        if (denominator > 1 && unit is not (LengthUnit.Inch or LengthUnit.Foot))
            return Fail("fractions go with inches; write metric lengths with decimals");

        var size = InNanometres(unit);
        // Every 64th of a foot or an inch is a whole number of nanometres, so this division is exact.
        return new(number.Value * size + numerator * (size / denominator), unit, number.IsPlainInteger && denominator == 1);
    }

    private static decimal InNanometres(LengthUnit unit) => unit switch
    {
        LengthUnit.Inch => Length.Inch.Nanometres,
        LengthUnit.Foot => Length.Foot.Nanometres,
        LengthUnit.Millimetre => Length.Millimetre.Nanometres,
        LengthUnit.Centimetre => Length.Centimetre.Nanometres,
        LengthUnit.Metre => Length.Metre.Nanometres,
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, message: null),
    };

    private (decimal Value, bool IsPlainInteger)? ReadNumber()
    {
        SkipSpaces();
        var start = _at;
        SkipDigits();
        var plain = _at > start;
        if (_at < text.Length && text[_at] == '.' && _at + 1 < text.Length && char.IsAsciiDigit(text[_at + 1]))
        {
            plain = false;
            _at++;
            SkipDigits();
        }
        if (_at == start)
        {
            Fail("a number is missing");
            return null;
        }
        if (_at - start - (plain ? 0 : 1) > MostDigits)
        {
            Fail("too many digits");
            return null;
        }
        return (decimal.Parse(text.AsSpan(start, _at - start), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture), plain);
    }

    private int? ReadDenominator(decimal numerator)
    {
        Take('/');
        return ReadNumber() is { IsPlainInteger: true, Value: 2 or 4 or 8 or 16 or 32 or 64 } lower && numerator < lower.Value
            ? (int)lower.Value
            : null;
    }

    private LengthUnit? ReadUnit(Dictionary<string, LengthUnit> units)
    {
        SkipSpaces();
        var start = _at;
        if (_at < text.Length && text[_at] is '\'' or '"')
        {
            _at++;
            if (text[start] == '\'' && _at < text.Length && text[_at] == '\'')
                _at++;
        }
        else
        {
            while (_at < text.Length && (char.IsAsciiLetter(text[_at]) || text[_at] == '.'))
                _at++;
        }
        if (_at == start)
        {
            _problem = AtEnd ? "the unit is missing" : null;
            return null;
        }
        if (units.TryGetValue(text[start.._at], out var unit))
        {
            _problem = null;
            return unit;
        }
        Fail($"'{text[start.._at]}' is not a unit of length");
        return null;
    }

    private bool NextIs(char wanted)
    {
        SkipSpaces();
        return _at < text.Length && text[_at] == wanted;
    }

    private bool NextIsDigit()
    {
        SkipSpaces();
        return _at < text.Length && char.IsAsciiDigit(text[_at]);
    }

    private void SkipSpaces()
    {
        while (_at < text.Length && text[_at] == ' ')
            _at++;
    }

    private void SkipDigits()
    {
        while (_at < text.Length && char.IsAsciiDigit(text[_at]))
            _at++;
    }

    private Measure? Fail(string problem)
    {
        _problem = problem;
        return null;
    }
}
