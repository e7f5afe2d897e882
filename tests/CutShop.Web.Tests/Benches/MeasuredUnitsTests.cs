using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;

namespace CutShop.Web.Tests.Benches;

/// <summary>What the tape says is typed as the cutter's pages show lengths.</summary>
public sealed partial class MeasuredUnitsTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_bare_number_is_in_the_unit_that_leads_for_the_cutter(bool millimetresFirst)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var code = (await shop.PlanDemoAsync()).Codes[0];
        using var cutter = await shop.SignInAsync(Role.Cutter);
        var name = RunningShop.NameOf(Role.Cutter);
        Assert.True((await shop.People.SetUnitsAsync(shop.People.Find(name)!.Id, millimetresFirst, name, Cancel)).IsDone);
        var bench = new CutBench(shop.Database);
        Assert.Null((await bench.TakeAsync(code, name, "take", Cancel)).Problem);
        foreach (var step in new[] { CutStep.Mark, CutStep.Cut })
            Assert.Null((await bench.TickAsync(code, step, name, step.ToString(), Cancel)).Problem);

        var cut = bench.Find(code)!.Cut;
        var typed = (millimetresFirst ? cut.Nanometres / 1_000_000m : (decimal)cut.Inches).ToString(CultureInfo.InvariantCulture);
        using var answer = await cutter.SendFormAsync($"/cut/{code.Plain}?handler=Measure", ("key", "measured"), ("measured", typed));
        Assert.Equal(cut, bench.Find(code)!.Measured);

        var board = WebUtility.HtmlDecode(await cutter.GetStringAsync(new Uri("/board", UriKind.Relative), Cancel)).Replace('\u00A0', ' ');
        var (inches, metric) = (LengthText.FeetInches(cut, 16), LengthText.Millimetres(cut));
        Assert.Contains($"<td class=\"figure stacked\">{(millimetresFirst ? $"{metric}\n{inches}" : $"{inches}\n{metric}")}</td>", board, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(true, "5975 mm", "+3 mm")]
    [InlineData(false, "19' 7 1/4\"", "+1/8\"")]
    public async Task The_tape_s_buttons_speak_the_unit_that_leads_for_the_cutter(bool millimetresFirst, string cut, string over)
    {
        await using var shop = await RunningShop.StartEmptyAsync();
        var code = (await shop.PlanDemoAsync()).Codes[0];
        using var cutter = await shop.SignInAsync(Role.Cutter);
        var name = RunningShop.NameOf(Role.Cutter);
        Assert.True((await shop.People.SetUnitsAsync(shop.People.Find(name)!.Id, millimetresFirst, name, Cancel)).IsDone);
        var bench = new CutBench(shop.Database);
        Assert.Null((await bench.TakeAsync(code, name, "take", Cancel)).Problem);
        foreach (var step in new[] { CutStep.Mark, CutStep.Cut })
            Assert.Null((await bench.TickAsync(code, step, name, step.ToString(), Cancel)).Problem);

        var page = await cutter.GetStringAsync(new Uri($"/cut/{code.Plain}", UriKind.Relative), Cancel);
        var buttons = Measures().Matches(page).Select(match => WebUtility.HtmlDecode(match.Groups["words"].Value).Replace('\u00A0', ' ')).ToList();
        Assert.Contains(cut, buttons);
        Assert.Contains(over, buttons);
        Assert.All(buttons, button => Assert.Equal(millimetresFirst, button.EndsWith(" mm", StringComparison.Ordinal)));
    }

    [GeneratedRegex("name=\"measured\" value=\"[^\"]+\">(?<words>[^<]+)</button>", RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Measures();
}
