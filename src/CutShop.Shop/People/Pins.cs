namespace CutShop.Shop.People;

/// <summary>PINs that many people choose: a run, a pattern, a year, a line on the keypad. Somebody who finds a tablet tries them first.</summary>
internal static class Pins
{
    /// <summary>Lines and corners of a keypad, and others of the most usual PINs that follow no rule; from memory of published counts.</summary>
    private static readonly HashSet<string> Usual =
    [
        "2580", "0852", "1470", "0741", "1590", "0951", "3690", "0963", "1478", "8741", "1236", "6321", "3698", "8963", "7410", "1379", "9713", "1397", "7931", "1793", "3971",
        "1595", "1004", "5683", "0007", "1230", "1231", "0001", "1021", "4200", "5201", "52013",
        "147258", "258369", "159357", "357159", "123654", "456789", "147258369", "159753", "753159", "789456", "789456123", "520131", "201314", "5201314",
        "147852", "963852", "112358", "102030", "123698", "147896325",
    ];

    /// <summary>True for a PIN that is among those that are tried first.</summary>
    public static bool IsUsual(ReadOnlySpan<char> pin) =>
        IsRun(pin) || IsRepetition(pin) || IsMirror(pin) || IsPairs(pin) || (pin.Length == 4 && IsYear(pin)) || Usual.Contains(pin.ToString());

    /// <summary>True for a year that somebody may be born in, or live in.</summary>
    public static bool IsYear(ReadOnlySpan<char> digits) => digits is ['1', '9', _, _] or ['2', '0', _, _] && digits.IndexOfAnyExceptInRange('0', '9') < 0;

    /// <summary>The same step from each digit to the next, as in 1234, 8642, 7890 and 1111.</summary>
    private static bool IsRun(ReadOnlySpan<char> pin)
    {
        var step = Step(pin, 1);
        for (var i = 2; i < pin.Length; i++)
        {
            if (Step(pin, i) != step)
                return false;
        }
        return true;
    }

    private static int Step(ReadOnlySpan<char> pin, int at) => (pin[at] - pin[at - 1] + 10) % 10;

    /// <summary>A beginning that comes again up to the end, as in 1212, 123123 and 12121.</summary>
    private static bool IsRepetition(ReadOnlySpan<char> pin)
    {
        for (var block = 1; block <= pin.Length / 2; block++)
        {
            if (pin[block..].SequenceEqual(pin[..^block]))
                return true;
        }
        return false;
    }

    /// <summary>The same from behind, as in 1221.</summary>
    private static bool IsMirror(ReadOnlySpan<char> pin)
    {
        for (var i = 0; i < pin.Length / 2; i++)
        {
            if (pin[i] != pin[^(i + 1)])
                return false;
        }
        return true;
    }

    /// <summary>Every digit twice, as in 1122.</summary>
    private static bool IsPairs(ReadOnlySpan<char> pin)
    {
        for (var i = 0; i + 1 < pin.Length; i += 2)
        {
            if (pin[i] != pin[i + 1])
                return false;
        }
        return pin.Length % 2 == 0;
    }
}
