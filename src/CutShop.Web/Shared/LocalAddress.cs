using System.Text;

namespace CutShop.Web.Shared;

/// <summary>Addresses of this site that come from outside, such as where to go back to after signing in.</summary>
public static class LocalAddress
{
    /// <summary>
    /// An address of this site as a header can carry it, or another where what was asked for may lead elsewhere. Browsers leave out
    /// tabs and line ends and read a backslash as a slash (WHATWG URL Standard, "basic URL parser"), so neither is taken.
    /// </summary>
    /// <param name="asked">What was asked for: a path from the root, with a query if it has one.</param>
    /// <param name="otherwise">Where to go instead.</param>
    public static string Of(string? asked, string otherwise) => asked is ['/', ..] && !asked.StartsWith("//", StringComparison.Ordinal) && !asked.Any(c => c == '\\' || char.IsControl(c))
        ? Escaped(asked)
        : otherwise;

    /// <summary>What is no printable ASCII character is written in percent; what is escaped already stays.</summary>
    private static string Escaped(string address)
    {
        var text = new StringBuilder(address.Length);
        foreach (var rune in address.EnumerateRunes())
            text.Append(rune.Value is > ' ' and < 0x7F ? rune.ToString() : Uri.EscapeDataString(rune.ToString()));
        return text.ToString();
    }
}
