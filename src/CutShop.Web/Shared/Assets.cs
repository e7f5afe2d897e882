using System.Collections.Frozen;
using System.IO.Compression;
using System.Security.Cryptography;
using CutShop.Paper.Sheets;

namespace CutShop.Web.Shared;

/// <summary>The site's own style sheets and scripts, built into the program and addressed by their content, so that a browser may keep them for good.</summary>
internal static class Assets
{
    private static readonly FrozenDictionary<string, Asset> All = Read();

    /// <summary>The address of an asset; it changes when the content does.</summary>
    public static string Address(string name) => $"/assets/{All[name].Tag}/{name}";

    /// <summary>The text of a script or style sheet.</summary>
    public static string Text(string name) => System.Text.Encoding.UTF8.GetString(All[name].Bytes);

    public static void MapAssets(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/assets/{tag}/{name}", (string tag, string name, HttpResponse response) =>
        {
            if (!All.TryGetValue(name, out var asset) || asset.Tag != tag)
                return Results.NotFound();
            response.Headers.CacheControl = "public, max-age=31536000, immutable";
            response.Headers.Vary = "Accept-Encoding";
            if (!response.HttpContext.Request.Headers.AcceptEncoding.ToString().Contains("br", StringComparison.OrdinalIgnoreCase))
                return Results.Bytes(asset.Bytes, asset.ContentType);
            response.Headers.ContentEncoding = "br";
            return Results.Bytes(asset.Compressed, asset.ContentType);
        }).AllowAnonymous();

    private static FrozenDictionary<string, Asset> Read()
    {
        const string folder = "assets/";
        var assembly = typeof(Assets).Assembly;
        var assets = assembly.GetManifestResourceNames().Where(name => name.StartsWith(folder, StringComparison.Ordinal)).ToDictionary(
            name => name[folder.Length..],
            name =>
            {
                using var stream = assembly.GetManifestResourceStream(name)!;
                var bytes = new byte[stream.Length];
                stream.ReadExactly(bytes);
                return new Asset(bytes, ContentTypeOf(name));
            });
        assets["paper.css"] = new Asset(System.Text.Encoding.UTF8.GetBytes(HtmlSheets.StyleSheet), "text/css");
        return assets.ToFrozenDictionary();
    }

    private static string ContentTypeOf(string name) => Path.GetExtension(name) switch
    {
        ".css" => "text/css",
        ".js" => "text/javascript",
        ".svg" => "image/svg+xml",
        var other => throw new InvalidOperationException($"No content type is set for {other}."),
    };

    private sealed record Asset(byte[] Bytes, string ContentType)
    {
        public string Tag { get; } = Convert.ToHexStringLower(SHA256.HashData(Bytes).AsSpan(0, 6));

        public byte[] Compressed { get; } = Compress(Bytes);

        private static byte[] Compress(byte[] bytes)
        {
            using var stream = new MemoryStream();
            using (var brotli = new BrotliStream(stream, CompressionLevel.SmallestSize))
                brotli.Write(bytes);
            return stream.ToArray();
        }
    }
}
