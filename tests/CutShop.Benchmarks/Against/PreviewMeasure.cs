using System.Globalization;

namespace CutShop.Benchmarks.Against;

/// <summary>The preview of a draft while another width of one post is typed each time.</summary>
internal sealed class PreviewMeasure(ShopProgram program) : Measure
{
    private const int Posts = 200;

    private readonly ProgramShop _shop = new(program);
    private string _draft = "";
    private int _typed;

    public override void Prepare()
    {
        _shop.Start();
        _shop.UseFormsOf("/drafts/new");
        var (draft, page) = _shop.Post(
            "/drafts/new",
            ("key", Guid.NewGuid().ToString("N")),
            ("number", "LQ-9"),
            ("customer", "Lantern Quay"),
            ("unit", "in"),
            ("posts", Posts.ToString(CultureInfo.InvariantCulture)),
            ("shape", "square"),
            ("across", "5 1/2"),
            ("postHeight", "42"),
            ("spacing", "clear"),
            ("width", "6'"),
            ("rows", "36, 18"),
            ("material", "manila"),
            ("diameter", "1 1/2"),
            ("sag", "4"),
            ("ends", "stopped"),
            ("between", "bored"));
        _draft = draft ?? throw new InvalidOperationException($"{program.Name}: the draft was not made: {page}");
        _shop.Stop();
    }

    public override IEnumerable<Reading[]> Turn()
    {
        _shop.Start();
        _shop.UseFormsOf(_draft);
        var time = MedianTime(_ => _shop.Ask(
            $"{_draft}/preview",
            ("version", "1"),
            ("at", "lines[0].posts[99]"),
            ("lines[0].posts[99].across", string.Create(CultureInfo.InvariantCulture, $"{140 + _typed++ * 0.001:0.000} mm"))));
        _shop.Stop();
        return [[new(string.Create(CultureInfo.InvariantCulture, $"preview of a draft of {Posts} posts, ms"), time)]];
    }

    public override void Dispose() => _shop.Dispose();
}
