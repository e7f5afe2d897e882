using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;
using CutShop.Web.Tests.People;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Routing;

namespace CutShop.Web.Tests.Host;

/// <summary>Nobody fills the server's memory: every route has a limit, and what is larger is refused unread.</summary>
public sealed class SizeLimitTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task No_route_takes_more_than_a_job_file_may_be_and_each_refuses_what_says_that_it_is_larger()
    {
        await using var shop = await RunningShop.StartAsync();
        var wrong = new List<string>();
        foreach (var route in shop.Routes.Where(route => route.Metadata.GetMetadata<IHttpMethodMetadata>() is not { } methods || methods.HttpMethods.Contains("POST")))
        {
            if (route.Metadata.GetMetadata<IRequestSizeLimitMetadata>() is { } own)
            {
                if (own.MaxRequestBodySize is null or > JobFileReader.LargestFile)
                    wrong.Add($"{route.RoutePattern.RawText} takes {own.MaxRequestBodySize} bytes");
            }
            else if (await StatusOfAsync(shop.Address, RightsTests.AddressOf(route), SizeLimits.Form + 1) is var status && status != 413)
            {
                wrong.Add($"{route.RoutePattern.RawText}: {status}");
            }
        }
        Assert.Empty(wrong);
    }

    [Fact]
    public async Task A_form_that_does_not_say_how_large_it_is_is_cut_off_and_changes_nothing()
    {
        await using var shop = await RunningShop.StartAsync();
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/people", UriKind.Relative))
        {
            Content = new FormUrlEncodedContent([KeyValuePair.Create("name", "Intruder"), KeyValuePair.Create("role", "owner"), KeyValuePair.Create("more", new string('x', SizeLimits.Form))]),
        };
        request.Headers.TransferEncodingChunked = true;
        using var answer = await shop.Client.SendAsync(request, Cancel);
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("What was sent is not complete", await answer.TextAsync(), StringComparison.Ordinal);
        Assert.Null(shop.People.Find("Intruder"));
    }

    [Fact]
    public async Task A_form_that_is_too_large_is_told_so()
    {
        await using var shop = await RunningShop.StartAsync();
        using var form = new ByteArrayContent(new byte[SizeLimits.Form + 1]);
        using var answer = await shop.Client.PostAsync(new Uri("/people", UriKind.Relative), form, Cancel);
        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("at most 4 MiB", await answer.TextAsync(), StringComparison.Ordinal);
    }

    /// <summary>The answer to a request that only says how much it would bring.</summary>
    private static async Task<int> StatusOfAsync(Uri site, string address, long bytes)
    {
        using var client = new TcpClient();
        await client.ConnectAsync(site.Host, site.Port, Cancel);
        await using var stream = client.GetStream();
        var head = string.Create(CultureInfo.InvariantCulture, $"POST {address} HTTP/1.1\r\nHost: {site.Host}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {bytes}\r\n\r\n");
        await stream.WriteAsync(Encoding.ASCII.GetBytes(head), Cancel);
        using var reader = new StreamReader(stream, Encoding.ASCII);
        return int.Parse((await reader.ReadLineAsync(Cancel))!.Split(' ')[1], CultureInfo.InvariantCulture);
    }
}
