using System.Globalization;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Rules;
using CutShop.Takeoff.Tables;
using CutShop.Takeoff.Words;

namespace CutShop.Paper.Words;

/// <summary>The words of paper in a language. Marks, codes and figures are the same in each.</summary>
public sealed partial class PaperText
{
    private readonly CultureInfo _language;

    private PaperText(string language) => _language = CultureInfo.GetCultureInfo(language);

    /// <summary>English.</summary>
    public static PaperText English { get; } = new("en");

    /// <summary>Spanish.</summary>
    public static PaperText Spanish { get; } = new("es");

    /// <summary>The language's tag, such as <c>en</c>.</summary>
    public string Language => _language.Name;

    /// <summary>A word or a sentence by its key, with values in its places.</summary>
    public string this[string key, params IReadOnlyList<object?> values] => PaperWords.List.Say(_language, key, values);

    /// <summary>What the takeoff says, in this language.</summary>
    public string this[Sentence sentence]
    {
        get
        {
            ArgumentNullException.ThrowIfNull(sentence);
            return sentence.In(_language);
        }
    }

    /// <summary>What a key has between bars, such as the headings of a table.</summary>
    public IReadOnlyList<string> Parts(string key) => this[key].Split(" | ");

    /// <summary>What a kind of paper is called.</summary>
    public string NameOf(PaperKind kind) => this[kind switch
    {
        PaperKind.Summary => "Summary",
        PaperKind.CutTickets => "CutTickets",
        PaperKind.DrillTickets => "DrillTickets",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    }];

    /// <summary>The foot of a sheet: where it belongs.</summary>
    public string Foot(string job, string what)
    {
        ArgumentNullException.ThrowIfNull(what);
        return what.Length == 0 ? this["JobName", job] : $"{this["JobName", job]}  ·  {what}";
    }

    /// <summary>A weight or a pull in pounds.</summary>
    public string Pounds(double? pounds) => pounds is { } known ? $"{Figures.Tenths(known)} lb" : this["NotKnown"];

    /// <summary>The weight of a piece; where one person does not lift it, with who does.</summary>
    public string WeightToLift(double? pounds) => Lifting.TakesTwo(pounds) ? this["WeightForTwo", Pounds(pounds)] : Pounds(pounds);

    /// <summary>A piece of hardware with its sizes.</summary>
    public string HardwareName(Hardware hardware, Func<Length, string> figure)
    {
        ArgumentNullException.ThrowIfNull(hardware);
        ArgumentNullException.ThrowIfNull(figure);
        return this[
            hardware.Kind switch
            {
                HardwareKind.Hook => "HookFor",
                HardwareKind.Thimble => "ThimbleFor",
                HardwareKind.Holder => "HolderFor",
                _ => throw new ArgumentOutOfRangeException(nameof(hardware), hardware.Kind, message: null),
            },
            this[hardware.InWords],
            figure(hardware.Size),
            figure(hardware.Reach)];
    }

    /// <summary>A rope material.</summary>
    public string Material(RopeMaterial material) => this[Rope.WordOf(material)];

    /// <summary>A rope: size and material, and its size on the coil where that was measured.</summary>
    public string RopeName(string material, string diameter, string? measured) =>
        measured is null ? $"{diameter} {material}" : this["RopeMeasured", diameter, material, measured];

    /// <summary>A post's name.</summary>
    public string PostName(string mark) => this["PostName", mark];

    /// <summary>From one post to another.</summary>
    public string FromPostToPost(string first, string last) => this["FromPostToPost", first, last];

    /// <summary>A post's shape.</summary>
    public string PostShape(PostShape shape) => this[shape == Takeoff.JobFile.PostShape.Square ? "Square" : "Round"];

    /// <summary>A post's shape and size.</summary>
    public string SizeOfPost(string shape, string across) => this["SizeOfPost", shape, across];

    /// <summary>A turn of the line.</summary>
    public string TurnOf(decimal degrees, bool left) => this[left ? "TurnsLeft" : "TurnsRight", degrees];

    /// <summary>A face of a post.</summary>
    public string FaceName(Face face) => this[face.InWords];

    /// <summary>What a datum is called, after a figure as in a table's head.</summary>
    public string NameOf(Datum datum) => this[datum switch
    {
        Datum.Ground => "AboveGround",
        Datum.Top => "FromTop",
        Datum.Foot => "FromFoot",
        _ => throw new ArgumentOutOfRangeException(nameof(datum), datum, message: null),
    }];

    /// <summary>A height on a post from its datum, and beside it from the top.</summary>
    /// <param name="post">The post.</param>
    /// <param name="datum">Where heights are measured from.</param>
    /// <param name="aboveGround">The height above ground.</param>
    /// <param name="figure">Writes a length.</param>
    public string HeightOn(Post post, Datum datum, Length aboveGround, Func<Length, string> figure)
    {
        ArgumentNullException.ThrowIfNull(post);
        ArgumentNullException.ThrowIfNull(figure);
        return string.Join(" · ", ((Datum[])[datum, Datum.Top]).Distinct().Select(from => $"{figure(post.HeightFrom(from, aboveGround))} {NameOf(from)}"));
    }

    /// <summary>A kind of bit.</summary>
    public string BitKindName(BitKind kind) => this[kind switch
    {
        BitKind.ThreadedForstner => "ThreadedForstner",
        BitKind.Spade => "SpadeBit",
        BitKind.HoleSaw => "HoleSaw",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    }];

    /// <summary>What a piece does at a post.</summary>
    public string AtPost(AtPost at)
    {
        ArgumentNullException.ThrowIfNull(at);
        return at.Kind switch
        {
            AtPostKind.Stopped => this["AtPostStopped"],
            AtPostKind.Through => this["AtPostThrough"],
            AtPostKind.Corner => this["AtPostCorner"],
            AtPostKind.Knot => this["AtPostKnot"],
            AtPostKind.Wrap => this["AtPostWrap", at.Treatment.Turns],
            AtPostKind.Join => this["AtPostJoin"],
            AtPostKind.Beside => this["AtPostBeside"],
            AtPostKind.Eye => this["AtPostEye"],
            _ => throw new ArgumentOutOfRangeException(nameof(at), at.Kind, message: null),
        };
    }

    /// <summary>The kind of a bore.</summary>
    public string BoreKind(AtPostKind kind) => this[kind switch
    {
        AtPostKind.Stopped => "BoreStopped",
        AtPostKind.Through => "BoreThrough",
        AtPostKind.Corner => "BoreCorner",
        AtPostKind.Knot => "BoreKnot",
        AtPostKind.Wrap => "BoreWrap",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    }];

    /// <summary>A screw; a null one means that none in the catalogue fits, and <paramref name="length"/> is what would.</summary>
    public string ScrewName(ScrewName? screw, string length) => screw is null ? this["NoScrewFits", length] : this[screw.InWords];

    /// <summary>The hole that sinks a screw's head: a counterbore for a hex head, a countersink for a flat one.</summary>
    public string HeadHole(Fixing fixing)
    {
        ArgumentNullException.ThrowIfNull(fixing);
        return this[fixing.IsCountersunk ? "Countersink" : "Counterbore"];
    }

    /// <summary>What holds a rope: a screw, a staple or an eye bolt, or what carries an eye.</summary>
    public string Holder(DrivenScrews driven, string length)
    {
        ArgumentNullException.ThrowIfNull(driven);
        return driven.Purpose switch
        {
            FixingPurpose.Beside => this["StapleOrEyeBolt"],
            FixingPurpose.Eye => this["HookOrPin"],
            _ => ScrewName(driven.Screw, length),
        };
    }

    /// <summary>What a screw is for.</summary>
    public string Purpose(FixingPurpose purpose) => this[purpose switch
    {
        FixingPurpose.End => "ForEnd",
        FixingPurpose.Line => "ForLine",
        FixingPurpose.CornerFirst => "ForCornerFirst",
        FixingPurpose.CornerSecond => "ForCornerSecond",
        FixingPurpose.Wrap => "ForWrap",
        FixingPurpose.Join => "ForJoin",
        FixingPurpose.Beside => "ForBeside",
        FixingPurpose.Eye => "ForEye",
        _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, message: null),
    }];

    private IReadOnlyList<string> All(params IEnumerable<string> keys) => [.. keys.Select(key => this[key])];
}
