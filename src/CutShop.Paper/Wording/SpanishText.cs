using CutShop.Takeoff;

namespace CutShop.Paper;

public partial class PaperText
{
    /// <summary>Spanish.</summary>
    public static PaperText Spanish { get; } = new SpanishText();
}

/// <summary>Spanish words of tickets, drawings, labels and packing lists. Marks, codes and figures are the same as in English.</summary>
internal sealed partial class SpanishText : PaperText
{
    public override string Language => "es";

    public override string PageOf(int page, int pages) => Say($"página {page} de {pages}");

    public override string Continued => "(continuación)";

    public override string Material(RopeMaterial material) => material switch
    {
        RopeMaterial.Polypropylene => "polipropileno",
        RopeMaterial.Polyester => "poliéster",
        RopeMaterial.Nylon => "nailon",
        RopeMaterial.Polyethylene => "polietileno",
        RopeMaterial.Manila => "manila",
        RopeMaterial.Sisal => "sisal",
        RopeMaterial.Hemp => "cáñamo",
        RopeMaterial.Jute => "yute",
        RopeMaterial.Cotton => "algodón",
        _ => throw new ArgumentOutOfRangeException(nameof(material), material, message: null),
    };

    public override string FaceName(Face face) => face.Sight switch
    {
        FaceSight.Toward => $"hacia {face.Neighbour}",
        FaceSight.AwayFrom => $"opuesta a {face.Neighbour}",
        FaceSight.Side => $"lateral, izquierda mirando a {face.Neighbour}",
        FaceSight.Around => "alrededor del poste",
        _ => throw new ArgumentOutOfRangeException(nameof(face), face.Sight, message: null),
    };

    public override string ScrewName(ScrewName? screw, string length) => screw switch
    {
        null => $"ninguno del catálogo sirve: hacen falta {length}",
        { Kind: ScrewKind.DeckScrew } => $"tornillo para terraza, inoxidable, {screw.Size} x {LengthText.Inches(screw.Length)}",
        { Kind: ScrewKind.LagScrew } => $"tirafondo inoxidable {screw.Size} x {LengthText.Inches(screw.Length)}",
        _ => throw new ArgumentOutOfRangeException(nameof(screw), screw.Kind, message: null),
    };

    public override string BitKindName(BitKind kind) => kind switch
    {
        BitKind.ThreadedForstner => "broca Forstner con punta roscada",
        BitKind.Spade => "broca de pala",
        BitKind.HoleSaw => "sierra de corona",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    public override string BitReason(BitChoice choice, Length bit)
    {
        ArgumentNullException.ThrowIfNull(choice);
        const string NoForstner = "no hay Forstner con punta roscada de esta medida en el soporte";
        return choice switch
        {
            { OnRack: false } => $"no hay broca de {LengthText.Inches(bit)} en el soporte: consiga una Forstner con punta roscada",
            { Kind: BitKind.ThreadedForstner } => "la mejor para un agujero limpio de fondo plano",
            { Kind: BitKind.Spade } => NoForstner + "; para cuerda de menos de 1 1/2 in sirve una de pala",
            { Kind: BitKind.HoleSaw } => NoForstner + "; la sierra de corona deja un taco que hay que sacar con formón",
            _ => throw new ArgumentOutOfRangeException(nameof(choice), choice.Kind, message: null),
        };
    }

    public override string AtPost(AtPost at) => at.Kind switch
    {
        AtPostKind.Stopped => "agujero ciego",
        AtPostKind.Through => "pasante",
        AtPostKind.Corner => "agujero de esquina",
        AtPostKind.Knot => "nudo",
        AtPostKind.Wrap => Say($"enrollada, {at.Treatment.Turns:0.#} vueltas"),
        _ => throw new ArgumentOutOfRangeException(nameof(at), at.Kind, message: null),
    };

    public override string BoreKind(AtPostKind kind) => kind switch
    {
        AtPostKind.Stopped => "ciego",
        AtPostKind.Through => "pasante",
        AtPostKind.Corner => "de esquina",
        AtPostKind.Knot => "pasante, para nudo",
        AtPostKind.Wrap => "enrollada",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    public override string Purpose(FixingPurpose purpose) => purpose switch
    {
        FixingPurpose.End => "extremo de la cuerda",
        FixingPurpose.Line => "fija la comba",
        FixingPurpose.CornerFirst => "esquina, primera cuerda",
        FixingPurpose.CornerSecond => "esquina, segunda cuerda",
        FixingPurpose.Wrap => "sujeta las vueltas",
        _ => throw new ArgumentOutOfRangeException(nameof(purpose), purpose, message: null),
    };

    public override string PostShape(PostShape shape) => shape == Takeoff.PostShape.Square ? "cuadrado" : "redondo";

    public override string NameOf(PaperKind kind) => kind switch
    {
        PaperKind.Summary => "resumen",
        PaperKind.CutTickets => "fichas de corte",
        PaperKind.DrillTickets => "fichas de taladro",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, message: null),
    };

    public override string Labels => "etiquetas";
}
