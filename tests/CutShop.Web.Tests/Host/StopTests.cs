using System.Globalization;
using System.Net.Sockets;
using System.Text;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Host;

public sealed class StopTests
{
    [Fact]
    public async Task Who_is_being_answered_when_the_program_is_told_to_stop_gets_the_answer_and_what_was_sent_is_stored()
    {
        var cancel = TestContext.Current.CancellationToken;
        using var shop = await ServedShop.StartAsync();
        await shop.SetUpAsync("Berrin", "seven green bollards");
        var form = $"name=Late&role=cutter&__RequestVerificationToken={Uri.EscapeDataString(PageText.TokenIn(await shop.Client.GetStringAsync(new Uri("/people", UriKind.Relative), cancel)))}";

        // The form is on its way, all but its last letter.
        using var browser = new TcpClient();
        await browser.ConnectAsync(shop.Client.BaseAddress!.Host, shop.Client.BaseAddress.Port, cancel);
        await using var line = browser.GetStream();
        var head = string.Create(CultureInfo.InvariantCulture, $"POST /people HTTP/1.1\r\nHost: 127.0.0.1\r\nCookie: {shop.Cookies}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: {form.Length}\r\nExpect: 100-continue\r\n\r\n");
        await line.WriteAsync(Encoding.ASCII.GetBytes(head), cancel);
        using var reader = new StreamReader(line, Encoding.UTF8);
        // It is being read.
        Assert.Equal("HTTP/1.1 100 Continue", await reader.ReadLineAsync(cancel));
        await line.WriteAsync(Encoding.ASCII.GetBytes(form[..^1]), cancel);
        var stopped = shop.Server.StopAsync();
        await UntilNobodyNewIsLetInAsync(shop, cancel);
        Assert.False(stopped.IsCompleted);

        await line.WriteAsync(Encoding.ASCII.GetBytes(form[^1..]), cancel);
        Assert.Equal("", await reader.ReadLineAsync(cancel));
        Assert.Equal("HTTP/1.1 200 OK", await reader.ReadLineAsync(cancel));
        Assert.Equal(0, await stopped);
        Assert.Equal(1, shop.Read(session => session.Value<long>("SELECT count(*) FROM people WHERE name = 'Late'")));
    }

    private static async Task UntilNobodyNewIsLetInAsync(ServedShop shop, CancellationToken cancel)
    {
        while (true)
        {
            using var probe = new TcpClient();
            try
            {
                await probe.ConnectAsync(shop.Client.BaseAddress!.Host, shop.Client.BaseAddress.Port, cancel);
            }
            catch (SocketException)
            {
                return;
            }
            await Task.Delay(20, cancel);
        }
    }
}
