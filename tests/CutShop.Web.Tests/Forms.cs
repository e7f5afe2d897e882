using System.Net;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests;

/// <summary>Sends the forms of the site's pages as a browser without scripts would.</summary>
public static class Forms
{
    /// <summary>Loads the page for its token, then sends the form.</summary>
    /// <param name="client">The client.</param>
    /// <param name="address">The form's address, with a handler where the page has several forms.</param>
    /// <param name="values">The fields.</param>
    public static async Task<HttpResponseMessage> SendFormAsync(this HttpClient client, string address, params (string Name, string Value)[] values)
    {
        var cancel = TestContext.Current.CancellationToken;
        var page = await client.GetStringAsync(new Uri(address.Split('?')[0], UriKind.Relative), cancel);
        var token = PageText.TokenIn(page);
        using var form = new FormUrlEncodedContent(values.Append((PageText.TokenField, token)).Select(pair => KeyValuePair.Create(pair.Item1, pair.Item2)));
        return await client.PostAsync(new Uri(address, UriKind.Relative), form, cancel);
    }

    /// <summary>The text of an answer, with marks of HTML read.</summary>
    public static async Task<string> TextAsync(this HttpResponseMessage answer) =>
        WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));

    /// <summary>Gets an address of the site.</summary>
    public static Task<HttpResponseMessage> AskAsync(this HttpClient client, string address) =>
        client.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
}
