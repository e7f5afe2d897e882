using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.Lengths;

/// <summary>A number with its unit.</summary>
/// <param name="Nanometres">Rounded down.</param>
/// <param name="IsFiner">True where it is not a whole number of nanometres.</param>
/// <param name="Unit">The unit that it was written in.</param>
/// <param name="IsWhole">True where it is a whole number of that unit, written as such.</param>
internal readonly record struct Measure(UInt128 Nanometres, bool IsFiner, Length Unit, bool IsWhole);

/// <summary>Walks once over a length's text; every step takes what it can and leaves the rest.</summary>
/// <param name="text">The text, in plain marks.</param>
internal ref struct LengthReader(ReadOnlySpan<char> text)
{
    /// <summary>Digits that fit 64 bits, and enough for any length in millimetres to the nanometre.</summary>
    private const int MostDigits = 19;

    private readonly ReadOnlySpan<char> _text = text;
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
    public Sentence Problem() => LengthWords.Of(
        "Accept",
        _problem ?? (AtEnd ? LengthWords.Of("Unfinished") : LengthWords.Of("NotUnderstood", OneLine.Of(_text[_at..].Trim().ToString()))),
        LengthText.Accepted);

    /// <summary>Takes one character if it is next.</summary>
    public bool Take(char wanted)
    {
        if (AtEnd || _text[_at] != wanted)
            return false;
        _at++;
        return true;
    }

    /// <summary>True where nothing follows but feet and inches without a unit: <c>5 6</c>, <c>39-10-1/4</c>.</summary>
    public bool IsBareFeet
    {
        get
        {
            var ahead = this;
            return ahead.ReadNumber() is { IsPlainInteger: true }
                && ahead.NextIsPart()
                && ahead.ReadNumber() is { } inches
                && (ahead.AtEnd || (inches.IsPlainInteger && ahead.NextIsPart() && ahead.ReadNumber() is not null && ahead.Take('/') && ahead.ReadNumber() is not null && ahead.AtEnd));
        }
    }

    /// <summary>Reads the feet of <see cref="IsBareFeet"/>.</summary>
    public Measure ReadBareFeet() => new((UInt128)ReadNumber()!.Value.Digits * (ulong)Length.Foot.Nanometres, IsFiner: false, Length.Foot, IsWhole: true);

    /// <summary>
    /// Reads what follows whole metres: <c>70 cm</c>, <c>705 mm</c>, or two or three digits, which are centimetres or millimetres. Null, with
    /// a problem noted, where it is not that.
    /// </summary>
    public Measure? ReadAfterMetres()
    {
        SkipSpaces();
        var start = _at;
        if (ReadNumber() is not { } number)
            return null;
        var digits = _at - start;
        var unit = !AtEnd ? ReadUnit() : digits == 2 ? Length.Centimetre : digits == 3 ? Length.Millimetre : null;
        if (unit is null && _problem is not null)
            return null;
        return number.IsPlainInteger && (unit == Length.Centimetre || unit == Length.Millimetre) && number.Digits < (ulong)(Length.Metre.Nanometres / unit.Value.Nanometres)
            ? new(number.Digits * (UInt128)unit.Value.Nanometres, IsFiner: false, unit.Value, IsWhole: true)
            : Fail("AfterMetres");
    }

    /// <summary>Reads <c>5</c>, <c>5.25</c>, <c>3/8</c>, <c>5 3/8</c> or <c>5-3/8</c> and its unit; null, with a problem noted, where it is not that.</summary>
    /// <param name="bareUnit">The unit of a number that has none, or null where it must have one.</param>
    public Measure? ReadMeasure(Length? bareUnit = null)
    {
        if (ReadNumber() is not { } number)
            return null;
        var (numerator, denominator) = (0UL, 1);
        if (NextIs('/'))
        {
            // The number read was the numerator.
            if (!number.IsPlainInteger || ReadDenominator(number.Digits) is not { } lower)
                return Fail("ProperFraction");
            (numerator, denominator, number) = (number.Digits, lower, default);
        }
        else if (number.IsPlainInteger && NextIsPart())
        {
            if (ReadNumber() is not { IsPlainInteger: true } upper || !NextIs('/'))
                return _problem is null ? Fail("TwoNumbers") : null;
            if (ReadDenominator(upper.Digits) is not { } lower)
                return Fail("ProperFraction");
            (numerator, denominator) = (upper.Digits, lower);
        }

        if ((AtEnd && bareUnit is not null ? bareUnit : ReadUnit()) is not { } unit)
            return null;
        if (denominator > 1 && unit != Length.Inch && unit != Length.Foot)
            return Fail("DecimalsForMetric");

        var size = (ulong)unit.Nanometres;
        // Every 64th of a foot or an inch is a whole number of nanometres, so this division is exact.
        var fraction = numerator * (size / (ulong)denominator);
        var nanometres = (UInt128)number.Digits * size;
        if (number.IsPlainInteger)
            return new(nanometres + fraction, IsFiner: false, unit, denominator == 1);
        var (whole, rest) = UInt128.DivRem(nanometres, number.Parts);
        return new(whole, rest != 0, unit, IsWhole: false);
    }

    private Number? ReadNumber()
    {
        SkipSpaces();
        var start = _at;
        var number = TakeDigits(default);
        var mark = _at;
        if (_at + 1 < _text.Length && _text[_at] is '.' or ',' && char.IsAsciiDigit(_text[_at + 1]))
        {
            _at++;
            number = TakeDigits(number with { Parts = 1 });
            if (_text[mark] == ',' && MayBeThousands(start, mark))
            {
                Fail("CommaTwoWays", _text[start.._at].ToString());
                return null;
            }
        }
        if (_at == start)
            Fail("NoNumber");
        else if (_at - start - (number.IsPlainInteger ? 0 : 1) > MostDigits)
            Fail("TooManyDigits");
        else
            return number;
        return null;
    }

    /// <summary>True for one to three digits, the first not 0, and three after the comma: a decimal here, thousands there.</summary>
    private readonly bool MayBeThousands(int start, int comma) => comma - start is > 0 and <= 3 && _text[start] != '0' && _at - comma - 1 == 3;

    private Number TakeDigits(Number number)
    {
        // Too many digits overflow, and are refused after it.
        for (; _at < _text.Length && char.IsAsciiDigit(_text[_at]); _at++)
            number = unchecked(new((number.Digits * 10) + _text[_at] - '0', number.Parts * 10));
        return number;
    }

    private int? ReadDenominator(ulong numerator)
    {
        Take('/');
        return ReadNumber() is { IsPlainInteger: true, Digits: 2 or 4 or 8 or 16 or 32 or 64 } lower && numerator < lower.Digits
            ? (int)lower.Digits
            : null;
    }

    private Length? ReadUnit()
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
            _problem = AtEnd ? LengthWords.Of("NoUnit") : null;
            return null;
        }
        if (UnitOf(_text[start.._at]) is { } unit)
        {
            _problem = null;
            return unit;
        }
        Fail("NotAUnit", _text[start.._at].ToString());
        return null;
    }

    private static Length? UnitOf(ReadOnlySpan<char> word)
    {
        Span<char> lower = stackalloc char[LengthText.LongestText];
        return lower[..Math.Max(0, word.ToLowerInvariant(lower))] switch
        {
            "in" or "in." or "inch" or "inches" or "\"" or "''" => Length.Inch,
            "ft" or "ft." or "foot" or "feet" or "'" => Length.Foot,
            "mm" => Length.Millimetre,
            "cm" => Length.Centimetre,
            "m" => Length.Metre,
            _ => null,
        };
    }

    private bool NextIs(char wanted)
    {
        SkipSpaces();
        return _at < _text.Length && _text[_at] == wanted;
    }

    /// <summary>Goes to the next number of a mixed one, past spaces, or past a hyphen right between the two; false where there is none.</summary>
    private bool NextIsPart()
    {
        var hyphen = _at > 0 && _at + 1 < _text.Length && char.IsAsciiDigit(_text[_at - 1]) && _text[_at] == '-' && char.IsAsciiDigit(_text[_at + 1]);
        if (hyphen)
            _at++;
        else
            SkipSpaces();
        return _at < _text.Length && char.IsAsciiDigit(_text[_at]);
    }

    private void SkipSpaces()
    {
        while (_at < _text.Length && _text[_at] == ' ')
            _at++;
    }

    private Measure? Fail(string key, params IReadOnlyList<object?> values)
    {
        _problem = LengthWords.Of(key, values);
        return null;
    }

    /// <summary>A number without a sign: its digits, as one number, and into how many parts they divide it.</summary>
    /// <param name="Digits">All its digits.</param>
    /// <param name="Parts">A power of ten for those after the point, or zero where there is no point.</param>
    private readonly record struct Number(ulong Digits, ulong Parts)
    {
        public bool IsPlainInteger => Parts == 0;
    }
}
