using CutShop.Takeoff;

namespace CutShop.Paper;

/// <content>Words on tickets, labels and packing lists.</content>
internal sealed partial class SpanishText
{
    public override string CutTicket => "Ficha de corte";

    public override string DrillTicket => "Ficha de taladro";

    public override string JobSummary => "Resumen del trabajo";

    public override string Job => "Trabajo";

    public override string Customer => "Cliente";

    public override string Due => "Entrega";

    public override string NoDay => "sin fecha";

    public override string Piece => "Pieza";

    public override string PieceCode => "Código de pieza";

    public override string Run => "Tramo";

    public override string Line => "Línea";

    public override string Row => "Fila";

    public override string FromTo => "De, a";

    public override string FromPostToPost(string first, string last) => $"{first} a {last}";

    public override string RopeLabel => "Cuerda";

    public override string RopeName(string material, string diameter, string? measured) =>
        measured is null ? $"{diameter} {material}" : $"{diameter} {material}, medida {measured}";

    public override string CutLength => "Largo de corte";

    public override string NetLength => "Largo neto";

    public override string Weight => "Peso";

    public override string NotKnown => "no se conoce";

    public override string Coil => "Rollo";

    public override string PlaceOnCoil => "Lugar en el rollo";

    public override string TapeMarksAreForChecking =>
        "Las marcas de cinta corren por todo el rollo desde su extremo libre, con el primer recorte y cada corte contados. Muestran cuánto rollo está usado: mida la pieza desde su propio extremo escuadrado.";

    public override string TapeFrom => "Marca de cinta, inicio";

    public override string TapeTo => "Marca de cinta, fin";

    public override string CutBy => "Cortó";

    public override string Measured => "Medida después de cortar";

    public override string DrilledBy => "Taladró";

    public override string CheckedBy => "Revisó";

    public override string Ends => "Extremos";

    public override IReadOnlyList<string> EndColumns => ["Extremo", "En el poste", "Hecho como", "Preparación"];

    public override string Start => "inicio";

    public override string Finish => "fin";

    public override string EndPreparation(bool natural, AtPostKind kind)
    {
        var cut = natural
            ? "Encintar o ligar a ambos lados de la marca y cortar en frío entre las dos."
            : "Cortar en caliente a escuadra y sellar los cordones en uno.";
        var then = kind switch
        {
            AtPostKind.Stopped or AtPostKind.Corner => natural
                ? " Dejar la ligadura puesta y delgada, para que entre en el agujero."
                : " Redondear el borde sellado, no más grueso que la cuerda, para que entre en el agujero.",
            AtPostKind.Knot => " La cola para el nudo de tope va en el largo de corte.",
            AtPostKind.Wrap => " Las vueltas van en el largo de corte; el extremo queda bajo el último tornillo.",
            _ => "",
        };
        return cut + then;
    }

    public override string Steps => "Pasos";

    public override IReadOnlyList<string> CuttingSteps(bool natural, string cutLength, bool hasCode) =>
    [
        $"Sacar la cuerda del rollo recta sobre la cinta del banco, con tensión ligera y pareja, sin cocas. Marcar {cutLength} desde el extremo a escuadra.",
        natural
            ? "Encintar o ligar con fuerza a ambos lados de la marca, hasta ella."
            : "Encintar alrededor de la cuerda en la marca, para que el corte salga a escuadra.",
        natural
            ? "Cortar en frío entre las ligaduras con hoja afilada; dejar puestas las dos."
            : "Cortar en la marca con el cuchillo caliente; sellar toda la cara y dejar enfriar.",
        "Medir otra vez de extremo a extremo con la misma tensión y anotarlo arriba. Una pieza corta se aparta como retazo de su lote: avisar antes de cortar otra.",
        hasCode ? "Poner la etiqueta de la pieza y comparar su código con esta ficha." : "Marcar la pieza con trabajo y tramo.",
        "Enrollar sin torcer, atar en dos lugares, dejarla con su trabajo.",
    ];

    public override string DrillingsOf(string numbers, string kind) => $"N.º {numbers}: {kind}";

    public override string Bit => "Broca";

    public override string StopCollar => "Tope de fondo";

    public override string StopCollarOf(string numbers) => $"Tope de fondo, n.º {numbers}";

    public override string RakeOf(string rake) => $"inclinación: {rake}";

    public override string DepthOf(string depth) => $"fondo {depth}";

    public override string Drilling => "Taladrar en este orden: una broca tras otra";

    public override IReadOnlyList<string> DrillingColumns =>
        ["N.º", "Fila", "Cara", "Marca desde el pie", "Marca desde arriba", "Broca", "Tope", "Tramo"];

    public override string ScrewHoles => "Agujeros de tornillo";

    public override IReadOnlyList<string> ScrewColumns => ["Altura desde el pie", "Tornillo", "Cara", "Avellanado", "Guía"];

    public override string WrappedPosts => "Postes enrollados";

    public override string PostsLabel => "Postes";

    public override string ScrewsOnSite => "Poste por poste, con los tornillos que sujetan las vueltas";

    public override IReadOnlyList<string> WrappedPostColumns => ["Hecho", "Poste", "Qué es", "Altura desde el pie", "Tornillos", "Avellanado", "Guía"];

    public override string HighPost(string height) => $"{height} de alto";

    public override string None => "ninguno";

    public override IReadOnlyList<string> DrillingSteps(bool through, bool raked, bool screws)
    {
        var steps = new List<string>
        {
            "Marcar en el poste qué cara mira a qué poste, y el pie. Marcar todos los centros antes de taladrar.",
            "Sujetar el poste. Ajustar el tope desde el filo de la broca y taladrar en el orden de la tabla.",
        };
        if (through)
            steps.Add("Los agujeros pasantes se taladran desde las dos caras hasta encontrarse: la cara opuesta queda entera. Girar el poste solo cuando una cara y una broca estén hechas.");
        if (raked)
            steps.Add("Un agujero inclinado sigue la pendiente: fijar la falsa escuadra, empezar recto hasta que muerda, luego inclinar.");
        if (screws)
            steps.Add("Los tornillos van al final: primero el avellanado, luego la guía en su centro.");
        steps.Add("Quitar las virutas, pasar un trozo de la cuerda por cada agujero y marcar el poste.");
        return steps;
    }

    public override string NothingToDrill => "Este poste no lleva agujeros: la cuerda va enrollada. Las guías de los tornillos se hacen en la obra, a través de las vueltas ya enrolladas, y antes no tienen lugar en el poste; la altura es la del medio de las vueltas.";

    public override string NothingToDrillInThem => "Estos postes no llevan agujeros: la cuerda va enrollada. Las guías de los tornillos se hacen en la obra, a través de las vueltas ya enrolladas, y antes no tienen lugar en el poste; la altura es la del medio de las vueltas.";

    public override string CounterboreDeep(string depth) => Say($"{depth} de hondo");

    public override string ShankHole(string diameter) => Say($"caña {diameter}");

    public override string PostSize => "Poste";

    public override string HeightAboveGround => "Altura sobre el suelo";

    public override string TurnLabel => "Esquina";

    public override string RopeTotals => "Cuerda que debe haber";

    public override IReadOnlyList<string> RopeTotalColumns => ["Cuerda", "Piezas", "Largo de corte total", "Pieza más larga", "Peso"];

    public override string Pieces => "Piezas";

    public override IReadOnlyList<string> PieceColumns => ["Tramo", "Código", "De, a", "Cuerda", "Largo de corte", "Peso", "Tiro en reposo"];

    public override string Screws => "Tornillos que preparar";

    public override IReadOnlyList<string> ScrewTotalColumns => ["Tornillo", "Cantidad"];

    public override string Bits => "Brocas";

    public override IReadOnlyList<string> BitColumns => ["Broca", "Tipo", "Taladros", "En el soporte"];

    public override string Yes => "sí";

    public override string Warnings => "Mirar esto antes de cortar";

    public override IReadOnlyList<string> WarningColumns => ["Dónde", "Qué"];

    public override string AndMore(int count) => Say($"y {count} más");

    public override string Foot(string job, string what) => what.Length == 0 ? $"Trabajo {job}" : $"Trabajo {job}  ·  {what}";

    public override string PostName(string mark) => $"Poste {mark}";

    public override string JobName(string number) => $"Trabajo {number}";

    public override string CancelledJobName(string number) => $"Trabajo {number}: CANCELADO";

    public override string TicketCancelled => "CANCELADO: un cambio del trabajo lo quitó";

    public override string TicketSurplus => "SOBRANTE: ya está hecho, pero no se necesita así";

    public override string JobCancelled => "CANCELADO: no cortar, taladrar ni enviar";

    public override string LabelEnd(string post, AtPost at, bool natural) => $"{post}: {AtPost(at)}, {(natural ? "ligado" : "sellado")}";

    public override string LabelPlace(string line, string row) => $"Línea {line}   Fila {row}";

    public override string PackingList => "Lista de empaque";

    public override string CountOf(int some, int all) => Say($"{some} de {all}");

    public override string TotalLength => "Largo en total";

    public override string PackedBy => "Empacó";

    public override string PackedPieces => "En el paquete";

    public override IReadOnlyList<string> PackingColumns => ["Tramo", "Código", "Cuerda", "Largo medido", "Peso", "Lote"];

    public override string MissingPieces(string runs) => $"No están en el paquete: {runs}.";

    public override string UndrilledPosts(string marks) => $"Postes sin taladrar: {marks}.";

    public override string DrilledPosts(string marks) => $"Postes taladrados: {marks}.";
}
