using System.Text.RegularExpressions;

namespace CutShop.Testing.Trust;

/// <summary>What a client without scripts reads out of a page's text.</summary>
internal static partial class PageText
{
    /// <summary>The name of the field that carries a form's token.</summary>
    public const string TokenField = "__RequestVerificationToken";

    /// <summary>The token of a page's forms.</summary>
    public static string TokenIn(string page) => Token().Match(page).Groups["value"].Value;

    /// <summary>A secret that a page shows once.</summary>
    public static string SecretIn(string page) => Secret().Match(page).Groups["value"].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"(?<value>[^\"]+)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Token();

    [GeneratedRegex("class=\"code secret\">(?<value>[^<]+)<", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Secret();
}
