using System.Globalization;
using System.Text;
using CutShop.Paper.Words;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Words;

namespace CutShop.Paper.Labels;

/// <summary>
/// The address of a piece's page, or a coil's: what the square code on a label holds. Scheme, host and <c>/P/CODE</c> are all capitals,
/// so that the code can use its denser alphabet; the server accepts either case.
/// </summary>
public static class PieceAddress
{
    /// <summary>The longest address that is put into a code, in characters.</summary>
    public const int Longest = 120;

    /// <summary>What a base address may look like, for messages.</summary>
    public static Sentence Accepted { get; } = PaperWords.Of("AcceptedAddress");

    /// <summary>What to think twice about before labels are printed with a base address.</summary>
    public static AddressDoubt DoubtOf(Uri baseAddress)
    {
        ArgumentNullException.ThrowIfNull(baseAddress);
        return baseAddress.IsLoopback ? AddressDoubt.ThisMachineOnly
            : baseAddress.Scheme == Uri.UriSchemeHttps ? AddressDoubt.None
            : AddressDoubt.NotSecure;
    }

    /// <summary>The address of a piece's page under the shop's base address.</summary>
    /// <returns>The address, or what is wrong with the base.</returns>
    public static Parsed<string> Of(string baseAddress, PieceCode code) => At(baseAddress, "/P/", code.Plain);

    /// <summary>The address of a job's site pack under the shop's base address.</summary>
    /// <returns>The address, or what is wrong with the base.</returns>
    public static Parsed<string> OfPack(string baseAddress, PieceCode code) => At(baseAddress, "/S/", code.Plain);

    /// <summary>The address of a coil's page under the shop's base address.</summary>
    /// <param name="baseAddress">The shop's base address.</param>
    /// <param name="mark">The coil's mark, such as <c>K0005</c>.</param>
    /// <returns>The address, or what is wrong with the base.</returns>
    public static Parsed<string> OfCoil(string baseAddress, string mark) => At(baseAddress, "/STOCK/", mark);

    /// <summary>
    /// The address that a post's label holds: the page of the line of a piece that passes the post, at that post. Who has the code of a piece may see
    /// it, on site too; a bench reads the job and the post from it.
    /// </summary>
    /// <returns>The address, or what is wrong with the base.</returns>
    public static Parsed<string> OfPost(string baseAddress, PieceCode code, string post) => At(baseAddress, "/P/", code.Plain, "/LINE#post-" + Uri.EscapeDataString(post));

    private static Parsed<string> At(string baseAddress, string kind, string name, string then = "")
    {
        ArgumentNullException.ThrowIfNull(baseAddress);
        if (!Uri.TryCreate(baseAddress, UriKind.Absolute, out var uri) || uri.Scheme is not ("http" or "https")
            || uri.Query.Length + uri.Fragment.Length + uri.UserInfo.Length > 0)
            return Parsed.Bad<string>(PaperWords.Of("AcceptedIs", Accepted));
        var address = new StringBuilder(uri.Scheme.ToUpperInvariant())
            .Append("://")
            .Append(uri.IdnHost.Contains(':', StringComparison.Ordinal) ? $"[{uri.IdnHost.ToUpperInvariant()}]" : uri.IdnHost.ToUpperInvariant());
        if (!uri.IsDefaultPort)
            address.Append(CultureInfo.InvariantCulture, $":{uri.Port}");
        // A path of the base may tell capitals from small letters, so it stays as it is.
        address.Append(uri.AbsolutePath.TrimEnd('/')).Append(kind).Append(name).Append(then);
        return address.Length <= Longest
            ? Parsed.Good(address.ToString())
            : Parsed.Bad<string>(PaperWords.Of("AddressTooLong", address.Length, Longest));
    }
}
