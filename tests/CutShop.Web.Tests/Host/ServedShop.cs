using System.Globalization;
using System.Net;
using CutShop.Testing.Stores;
using CutShop.Testing.Trust;

namespace CutShop.Web.Tests.Host;

/// <summary>A shop of its own served by the real program, gone when disposed.</summary>
internal sealed class ServedShop : IDisposable
{
    private readonly string _folder;
    private readonly CookieContainer _cookies = new();

    private ServedShop(string folder, int port, ServerProcess server)
    {
        (_folder, Server) = (folder, server);
        Client = new HttpClient(new HttpClientHandler { CookieContainer = _cookies, AllowAutoRedirect = false })
        {
            BaseAddress = new Uri(string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}")),
        };
    }

    /// <summary>The shop's folder.</summary>
    public string Folder => _folder;

    public ServerProcess Server { get; }

    /// <summary>A browser that follows no redirect.</summary>
    public HttpClient Client { get; }

    /// <summary>The cookies of <see cref="Client"/> as a header has them.</summary>
    public string Cookies => _cookies.GetCookieHeader(Client.BaseAddress!);

    /// <summary>Everything that the program has written to its console.</summary>
    public string Said => string.Join('\n', Server.Said);

    /// <summary>Starts it.</summary>
    /// <param name="environment">Settings by the environment.</param>
    /// <param name="options">Options of <c>serve</c> beside folder and address.</param>
    public static async Task<ServedShop> StartAsync(IReadOnlyDictionary<string, string>? environment = null, params string[] options)
    {
        var folder = Directory.CreateTempSubdirectory("cutshop-served-").FullName;
        var port = FreePort.Find();
        var start = ServerProcess.Command(["serve", "--shop", folder, "--listen", string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}"), "--backup-at", "never", .. options]);
        foreach (var (name, value) in environment ?? new Dictionary<string, string>())
            start.Environment[name] = value;
        return new(folder, port, await ServerProcess.StartAsync(start));
    }

    /// <summary>Makes the owner by the link that the program wrote to its console; the client is the owner then.</summary>
    /// <returns>The link's token.</returns>
    public async Task<string> SetUpAsync(string name, string password)
    {
        string? line;
        while ((line = Server.Said.FirstOrDefault(said => said.Contains("/set-up/", StringComparison.Ordinal))) is null)
            await Task.Delay(20, TestContext.Current.CancellationToken);
        var token = line.Split("/set-up/")[1].Trim();
        using var made = await Client.SendFormAsync($"/set-up/{token}", ("name", name), ("password", password), ("again", password));
        Assert.Equal(HttpStatusCode.Redirect, made.StatusCode);
        return token;
    }

    /// <summary>The database, read by another process than the server's.</summary>
    public T Read<T>(Func<ShopSession, T> work)
    {
        using var database = ShopDatabase.Open(ShopFolder.DatabaseIn(_folder), TimeProvider.System);
        return database.Read(work);
    }

    public void Dispose()
    {
        Client.Dispose();
        Server.Dispose();
        Directory.Delete(_folder, recursive: true);
    }
}
