using System.Net;
using System.Text.RegularExpressions;

namespace CutShop.Web.Tests;

/// <summary>Sends the forms of the site's pages as a browser without scripts would.</summary>
public static partial class Forms
{
    /// <summary>Loads the page for its token, then sends the form.</summary>
    /// <param name="client">The client.</param>
    /// <param name="address">The form's address, with a handler where the page has several forms.</param>
    /// <param name="values">The fields.</param>
    public static async Task<HttpResponseMessage> SendFormAsync(this HttpClient client, string address, params (string Name, string Value)[] values)
    {
        var cancel = TestContext.Current.CancellationToken;
        var page = await client.GetStringAsync(new Uri(address.Split('?')[0], UriKind.Relative), cancel);
        var token = TokenIn(page);
        using var form = new FormUrlEncodedContent(values.Append(("__RequestVerificationToken", token)).Select(pair => KeyValuePair.Create(pair.Item1, pair.Item2)));
        return await client.PostAsync(new Uri(address, UriKind.Relative), form, cancel);
    }

    /// <summary>The text of an answer, with marks of HTML read.</summary>
    public static async Task<string> TextAsync(this HttpResponseMessage answer) =>
        WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

    /// <summary>Gets an address of the site.</summary>
    public static Task<HttpResponseMessage> AskAsync(this HttpClient client, string address) =>
        client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);

    /// <summary>The token of a page's forms.</summary>
    public static string TokenIn(string page) => Token().Match(page).Groups["value"].Value;

    /// <summary>A secret that a page shows once.</summary>
    public static string SecretIn(string page) => Secret().Match(page).Groups["value"].Value;

    [GeneratedRegex("name=\"__RequestVerificationToken\" type=\"hidden\" value=\"(?<value>[^\"]+)\"", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Token();

    [GeneratedRegex("class=\"code secret\">(?<value>[^<]+)<", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Secret();
}
