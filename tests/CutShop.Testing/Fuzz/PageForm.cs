using System.Net;
using System.Text.RegularExpressions;

namespace CutShop.Testing.Fuzz;

/// <summary>A form as it stands on a page.</summary>
/// <param name="Action">Where it is sent.</param>
/// <param name="Fields">Its fields and buttons with what they hold.</param>
internal sealed partial record PageForm(string Action, IReadOnlyList<KeyValuePair<string, string>> Fields)
{
    /// <summary>Every form of a page that is posted.</summary>
    public static IEnumerable<PageForm> On(string address, string page) =>
        from form in Forms().Matches(page)
        let action = Attribute(form.Groups["tag"].Value, "action")
        select new PageForm(action.Length > 0 ? action : address, [.. Named().Matches(form.Groups["inside"].Value).Select(Field)]);

    /// <summary>Every address of this site that a page leads to.</summary>
    public static IEnumerable<string> LinksOn(string page) =>
        Links().Matches(page).Select(link => WebUtility.HtmlDecode(link.Groups["to"].Value).Split('#')[0]);

    private static KeyValuePair<string, string> Field(Match field) => new(Attribute(field.Value, "name"), Attribute(field.Value, "value"));

    private static string Attribute(string tag, string name) =>
        WebUtility.HtmlDecode(Regex.Match(tag, $"\\b{name}=\"([^\"]*)\"", RegexOptions.None, TimeSpan.FromSeconds(1)).Groups[1].Value);

    [GeneratedRegex("<form(?<tag>[^>]*method=\"post\"[^>]*)>(?<inside>.*?)</form>", RegexOptions.Singleline | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Forms();

    [GeneratedRegex("<(input|select|textarea|button)[^>]*\\bname=\"[^>]*>", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Named();

    [GeneratedRegex("<a [^>]*href=\"(?<to>/[^\"]*)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Links();
}
