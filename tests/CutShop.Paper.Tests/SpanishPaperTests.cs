using System.Reflection;
using CutShop.Takeoff;

namespace CutShop.Paper.Tests;

public sealed class SpanishPaperTests
{
    /// <summary>Figures, dates and signs that are the same in both languages.</summary>
    private static readonly string[] Same =
        [nameof(PaperText.DayOf), nameof(PaperText.Pounds), nameof(PaperText.SizeOfPost), nameof(PaperText.LabelSpan), "get_" + nameof(PaperText.No)];

    /// <summary>Paper of the order desk and the owner, which is in English alone: quotes and cut plans.</summary>
    private static readonly string[] DeskOnly =
    [
        "get_CutPlanTitle", "get_PlanState", "get_PlanProof", "get_PlanPieces", "get_PlanPieceCancelled", "get_PlanScrap", "PlanCoil", "get_PlanPiecesInOrder", "get_PlanColumns", "PlanKeeps",
        "PlanScraps", "get_PlanUsesUp", "get_Offcut", "CoilBarTitle", "CoilBarDescription", "PlanPictureDescription", "PlanFoot",
        "get_Supplier", "QuoteName", "get_QuoteMade", "get_QuoteStands", "get_Total", "TaxIncluded", "get_QuotedLines", "get_QuotedColumns", "get_NetSum", "TaxLine",
        "get_Included", "IncludedIn", "PostsAlike", "OtherPosts", "get_QuoteCautions",
    ];

    [Fact]
    public void Every_sentence_of_tickets_labels_and_site_paper_has_spanish_words()
    {
        var spanish = PaperText.Spanish.GetType();
        var english = typeof(PaperText).GetMethods(BindingFlags.Public | BindingFlags.Instance)
            .Where(words => words.IsVirtual && words.DeclaringType == typeof(PaperText))
            .Where(words => spanish.GetMethod(words.Name, [.. words.GetParameters().Select(parameter => parameter.ParameterType)])!.DeclaringType == typeof(PaperText))
            .Select(words => words.Name);
        Assert.Equal(Same.Concat(DeskOnly).Order(StringComparer.Ordinal), english.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_reason_for_a_bit_is_told_in_spanish_whatever_hangs_on_the_rack()
    {
        var (thin, thick) = (Length.FromSixtyFourths(80), Length.FromSixtyFourths(128));
        BitRack[] racks = [new([]), .. Enum.GetValues<BitKind>().Select(kind => new BitRack([new(kind, thin), new(kind, thick)]))];
        var choices = racks.SelectMany(rack => new[] { rack.Choose(thin, thin), rack.Choose(thick, thick) }).Distinct().ToList();
        Assert.Equal(3 + 1, choices.Count); // each kind of bit, and that no bit is there
        Assert.All(choices, choice =>
        {
            var said = PaperText.Spanish.BitReason(choice, thin);
            Assert.Equal(choice.ReasonFor(thin), PaperText.English.BitReason(choice, thin));
            Assert.NotEqual(choice.ReasonFor(thin), said);
            Assert.Matches("la mejor|en el soporte", said);
        });
    }

    [Fact]
    public void Every_screw_of_the_catalogue_has_its_spanish_name_with_the_same_size_and_length()
    {
        Assert.All(ShopTables.Standard.Screws.Screws, screw =>
        {
            var said = PaperText.Spanish.ScrewName(screw.Name, "");
            Assert.Matches(screw.Kind == ScrewKind.LagScrew ? "^tirafondo inoxidable " : "^tornillo para terraza, inoxidable, ", said);
            Assert.EndsWith($" {screw.Size} x {LengthText.Inches(screw.Length)}", said, StringComparison.Ordinal);
        });
    }
}
