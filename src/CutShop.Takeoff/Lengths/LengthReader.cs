using System.Globalization;
using CutShop.Takeoff.Words;

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
/// <param name="text">The text, in plain marks.</param>
/// <param name="units">The unit words.</param>
internal ref struct LengthReader(ReadOnlySpan<char> text, Dictionary<string, LengthUnit>.AlternateLookup<ReadOnlySpan<char>> units)
{
    /// <summary>Digits that fit a decimal with room for the unit's factor, and enough for any length in millimetres to the nanometre.</summary>
    private const int MostDigits = 19;

    private readonly ReadOnlySpan<char> _text = text;
    private readonly Dictionary<string, LengthUnit>.AlternateLookup<ReadOnlySpan<char>> _units = units;
    private int _at;
    private Sentence? _problem;

    /// <summary>True where nothing but spaces is left.</summary>
    public bool AtEnd
    {
        get
        {
            SkipSpaces();
            return _at == _text.Length;
        }
    }

    /// <summary>Why the last step failed, or that the rest was not understood.</summary>
    public Sentence Problem() => LengthWords.Say(
        "Accept",
        _problem ?? (AtEnd ? LengthWords.Say("Unfinished") : LengthWords.Say("NotUnderstood", OneLine.Of(_text[_at..].Trim().ToString()))),
        LengthText.Accepted);

    /// <summary>Takes one character if it is next.</summary>
    public bool Take(char wanted)
    {
        if (AtEnd || _text[_at] != wanted)
            return false;
        _at++;
        return true;
    }

    /// <summary>Reads <c>5</c>, <c>5.25</c>, <c>3/8</c> or <c>5 3/8</c> and its unit; null, with a problem noted, where it is not that.</summary>
    /// <param name="bareUnit">The unit of a number that has none, or null where it must have one.</param>
    public Measure? ReadMeasure(LengthUnit? bareUnit = null)
    {
        if (ReadNumber() is not { } number)
            return null;
        var numerator = 0;
        var denominator = 1;
        if (NextIs('/'))
        {
            // The number read was the numerator.
            if (!number.IsPlainInteger || ReadDenominator(number.Value) is not { } lower)
                return Fail("ProperFraction");
            (numerator, denominator, number) = ((int)number.Value, lower, default);
        }
        else if (number.IsPlainInteger && NextIsDigit())
        {
            if (ReadNumber() is not { IsPlainInteger: true } upper || !NextIs('/') || ReadDenominator(upper.Value) is not { } lower)
                return Fail("ProperFraction");
            (numerator, denominator) = ((int)upper.Value, lower);
        }

        if ((AtEnd && bareUnit is not null ? bareUnit : ReadUnit()) is not { } unit)
            return null;
        if (denominator > 1 && unit is not (LengthUnit.Inch or LengthUnit.Foot))
            return Fail("DecimalsForMetric");

        var size = InNanometres(unit);
        // Every 64th of a foot or an inch is a whole number of nanometres, so this division is exact.
        var fraction = numerator * (size / denominator);
        return new(number.IsPlainInteger && number.Value < int.MaxValue ? ((long)number.Value * size) + fraction : (number.Value * size) + fraction, unit, number.IsPlainInteger && denominator == 1);
    }

    private static long InNanometres(LengthUnit unit) => unit switch
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
        if (_at < _text.Length && _text[_at] == '.' && _at + 1 < _text.Length && char.IsAsciiDigit(_text[_at + 1]))
        {
            plain = false;
            _at++;
            SkipDigits();
        }
        if (_at == start)
        {
            Fail("NoNumber");
            return null;
        }
        if (_at - start - (plain ? 0 : 1) > MostDigits)
        {
            Fail("TooManyDigits");
            return null;
        }
        var digits = _text[start.._at];
        return plain ? (ulong.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture), plain) : (decimal.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture), plain);
    }

    private int? ReadDenominator(decimal numerator)
    {
        Take('/');
        return ReadNumber() is { IsPlainInteger: true, Value: 2 or 4 or 8 or 16 or 32 or 64 } lower && numerator < lower.Value
            ? (int)lower.Value
            : null;
    }

    private LengthUnit? ReadUnit()
    {
        SkipSpaces();
        var start = _at;
        if (_at < _text.Length && _text[_at] is '\'' or '"')
        {
            _at++;
            if (_text[start] == '\'' && _at < _text.Length && _text[_at] == '\'')
                _at++;
        }
        else
        {
            while (_at < _text.Length && (char.IsAsciiLetter(_text[_at]) || _text[_at] == '.'))
                _at++;
        }
        if (_at == start)
        {
            _problem = AtEnd ? LengthWords.Say("NoUnit") : null;
            return null;
        }
        if (_units.TryGetValue(_text[start.._at], out var unit))
        {
            _problem = null;
            return unit;
        }
        Fail("NotAUnit", _text[start.._at].ToString());
        return null;
    }

    private bool NextIs(char wanted)
    {
        SkipSpaces();
        return _at < _text.Length && _text[_at] == wanted;
    }

    private bool NextIsDigit()
    {
        SkipSpaces();
        return _at < _text.Length && char.IsAsciiDigit(_text[_at]);
    }

    private void SkipSpaces()
    {
        while (_at < _text.Length && _text[_at] == ' ')
            _at++;
    }

    private void SkipDigits()
    {
        while (_at < _text.Length && char.IsAsciiDigit(_text[_at]))
            _at++;
    }

    private Measure? Fail(string key, params IReadOnlyList<object?> values)
    {
        _problem = LengthWords.Say(key, values);
        return null;
    }
}
