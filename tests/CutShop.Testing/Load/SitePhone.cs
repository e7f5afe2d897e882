namespace CutShop.Testing.Load;

/// <summary>An installer's phone: scans one label after the other, and now and then looks at the whole line.</summary>
internal sealed class SitePhone(Uri site, int number, TimeSpan between, LoadNotes notes, IReadOnlyList<string> codes)
    : LoadClient(site, number, between, notes)
{
    private const int PagesALine = 4;

    private readonly Random _random = new(number);

    protected override Task StepAsync() =>
        SendAsync(HttpMethod.Get, $"/p/{codes[_random.Next(codes.Count)]}{(_random.Next(PagesALine) == 0 ? "/line" : "")}");
}
