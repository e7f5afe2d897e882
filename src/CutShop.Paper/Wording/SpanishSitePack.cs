namespace CutShop.Paper;

/// <content>Words of a site pack on paper.</content>
internal sealed partial class SpanishText
{
    public override string SitePack => "Paquete de obra";

    public override string Contents => "Contenido";

    public override string RowHeight => "Altura de la fila";

    public override string SagToSet => "Comba por dar";

    public override IReadOnlyList<string> SagColumns => ["Entre", "Comba por dar", "Largo del cordel"];

    public override string SagIsMeasuredSo => "Tense un cordel donde la cuerda toca los dos postes. La comba es lo que cuelga la cuerda por debajo de él en el medio.";

    public override string OrderOfWork => "Orden de trabajo";

    public override string PiecesInOrder => "Piezas, en el orden de colgarlas";

    public override IReadOnlyList<string> LinePieceColumns => ["Tramo", "Código", "De, a", "Altura de la fila", "Largo de corte"];

    public override string PostsToBore => "Postes, por taladrar en obra";

    public override IReadOnlyList<string> PostBoreColumns => ["Poste", "Cara", "Altura del suelo", "Broca", "Inclinación", "Hondo", "Tope"];

    public override string SitePackCode => "Para la obra: escanee esto mientras haya red";

    public override string SitePackCodeDescription(string address) => $"Un código cuadrado con la dirección {address}.";

    public override IReadOnlyList<string> SitePackCodeLines =>
        ["Paquete de obra", "Escanee esto mientras haya red:", "el teléfono guarda las páginas de todas", "las piezas y las etiquetas se abren sin ella."];
}
