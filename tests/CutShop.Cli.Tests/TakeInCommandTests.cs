namespace CutShop.Cli.Tests;

public sealed class TakeInCommandTests : IDisposable
{
    private readonly string _shop = Directory.CreateTempSubdirectory("cutshop-").FullName;

    [Fact]
    public async Task A_job_is_taken_in_with_all_its_paper_and_a_second_time_changes_nothing()
    {
        var file = Path.Combine("demo", "lq-1043-beach-ramp.json");
        var first = await Ran.WithAsync(input: null, "take-in", file, "--shop", _shop);
        Assert.Equal((0, ""), (first.ExitCode, first.Errors));
        Assert.StartsWith("LQ-1043: taken in\n", first.Output, StringComparison.Ordinal);
        Assert.Equal(
            ["cut-tickets.html", "cut-tickets.pdf", "drill-tickets.html", "drill-tickets.pdf", "labels.pdf", "summary.html", "summary.pdf"],
            Directory.GetFiles(Path.Combine(_shop, "paper", "LQ-1043")).Select(Path.GetFileName).Order(StringComparer.Ordinal));

        var second = await Ran.WithAsync(input: null, "take-in", file, "--shop", _shop);
        Assert.Equal(0, second.ExitCode);
        Assert.StartsWith("LQ-1043: was taken in before; nothing changed", second.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_address_of_labels_is_taken_as_the_site_takes_it_and_another_text_is_refused()
    {
        var file = Path.Combine("demo", "lq-1043-beach-ramp.json");
        var refused = await Ran.WithAsync(input: null, "take-in", file, "--shop", _shop, "--address", "shop.example");
        Assert.Equal(1, refused.ExitCode);
        Assert.Contains("--address: \"shop.example\": accepted: an address such as https://shop.example", refused.Errors, StringComparison.Ordinal);
        var taken = await Ran.WithAsync(input: null, "take-in", file, "--shop", _shop, "--address", "https://shop.example");
        Assert.Equal((0, ""), (taken.ExitCode, taken.Errors));
    }

    [Fact]
    public async Task Another_job_under_a_taken_number_is_refused()
    {
        var file = Path.Combine(AppContext.BaseDirectory, "demo", "lq-1043-beach-ramp.json");
        await Ran.WithAsync(input: null, "take-in", file, "--shop", _shop);
        var changed = (await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken)).Replace("beach ramp", "boat ramp", StringComparison.Ordinal);
        var ran = await Ran.WithAsync(changed, "take-in", "-", "--shop", _shop);
        Assert.Equal(2, ran.ExitCode);
        Assert.Contains("another job has this number", ran.Errors, StringComparison.Ordinal);
    }

    public void Dispose() => Directory.Delete(_shop, recursive: true);
}
