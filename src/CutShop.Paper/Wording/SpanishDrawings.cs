namespace CutShop.Paper;

/// <content>Words on drawings, and cautions.</content>
internal sealed partial class SpanishText
{
    public override string ElevationTitle(string line, int band, int bands, int oneTo) => bands == 1
        ? Say($"Línea {line}, alzado, 1 : {oneTo}")
        : Say($"Línea {line}, alzado, parte {band} de {bands}, 1 : {oneTo}");

    public override string ElevationDescription(string first, string last, int posts, int rows) => Say(
        $"Vista de lado del poste {first} al poste {last}: {posts} postes sobre la pendiente del suelo y {rows} filas de cuerda colgando en sus curvas, con anchos, alturas y combas.");

    public override string PlanTitle(int oneTo) => Say($"Planta, vista desde arriba, 1 : {oneTo}");

    public override string PlanDescription(string lines) => $"Postes y líneas de cuerda desde arriba, cada línea en su lugar: {lines}.";

    public override string PlanWithRun(string description, string run) => $"{description} El tramo {run} va en negrita.";

    public override string Cautions => "Cuidado";

    public override IReadOnlyList<string> CuttingSyntheticCautions =>
    [
        "El cuchillo caliente quema al tocarlo, y el extremo fundido también: guantes contra el calor, y dejar enfriar antes de tocar.",
        "La cuerda fundida da humos dañinos: ventilar, apartar la cara, sellar sin que humee ni se queme.",
        "Fuego: despejar el banco, extintor a mano, nunca dejar solo un cuchillo caliente encendido.",
    ];

    public override IReadOnlyList<string> CuttingNaturalCautions =>
    [
        "La fibra natural no se funde: cortar en frío, con hoja afilada, hacia fuera y en banco despejado. Sin llama ni hoja caliente.",
        "Los cordones se abren donde no están ligados: encintar o ligar antes de que toque la hoja.",
        "Guantes; el polvo de fibra irrita, lejos de la cara y los ojos.",
    ];

    public override IReadOnlyList<string> DrillingCautions =>
    [
        "Una broca grande puede trabarse y girar el taladro: sujetar el poste, empuñadura lateral, las dos manos, pies firmes, sin guantes ni mangas sueltas junto a la broca.",
        "Gafas. Broca afilada, dejar que corte sin forzar; aflojar al salir.",
        .. TimberCautions,
    ];

    public override IReadOnlyList<string> TimberCautions =>
        ["Madera tratada: mascarilla y gafas contra el polvo, barrerlo, lavarse las manos antes de comer, nunca quemar los restos."];

    public override IReadOnlyList<string> RailingCautions =>
        ["Una baranda de cuerda no es una protección contra caídas. Donde haga falta una, deciden la norma local y un profesional habilitado."];

    public override string PullCaution =>
        "Los pesos se estiman con tablas publicadas. El tiro es el de la cuerda en reposo por su propio peso; quien se apoya o se sienta tira muchas veces más. No sirve para calcular estructuras.";

    public override string LineName(string mark) => $"Línea {mark}";

    public override string Sag(string figure) => $"comba {figure}";

    public override string Straight => "recta";

    public override string Clear(string figure) => $"{figure} libres";

    public override string Centres(string figure) => $"{figure} entre centros";

    public override string Rise(string figure) => $"sube {figure}";

    public override string Fall(string figure) => $"baja {figure}";

    public override string TurnOf(decimal degrees, bool left) => Say($"gira {degrees:0.##}° a la {(left ? "izquierda" : "derecha")}");

    public override string Turns(decimal turns) => Say($"{turns:0.#} vueltas");

    public override string NotDrawn(int posts) => Say($"Otros {posts} postes de esta línea no están dibujados; sus medidas están en sus fichas.");

    public override string FacesTitle(string post, int oneTo) => Say($"Poste {post}, caras que se taladran, 1 : {oneTo}");

    public override string FacesDescription(string faces) => $"El poste visto desde cada cara que se taladra, con alturas desde el pie: {faces}.";

    public override string SectionsTitle(int oneTo) => Say($"Secciones, 1 : {oneTo}");

    public override string SectionsDescription(string rows) => $"El poste cortado por los agujeros de las filas {rows}, desde arriba, y de lado donde un agujero va inclinado.";

    public override string FromFoot => "desde el pie";

    public override string BitOf(string figure) => $"broca {figure}";

    public override string PilotOf(string figure) => $"guía {figure}";

    public override string FromAbove(string rows) => $"{rows}: desde arriba";

    public override string FromSide(string rows) => $"{rows}: de lado";

    public override string RakeUpToward(string degrees, string post) => $"{degrees} sube hacia {post}";

    public override string RakeDownToward(string degrees, string post) => $"{degrees} baja hacia {post}";

    public override string ScrewAt(string row) => $"tornillo {row}";

    public override string WallOf(string figure) => $"pared {figure}";

    public override string Level => "a nivel";

    public override string LabelTitle(string code) => $"Etiqueta de la pieza {code}";

    public override string LabelDescription(string address) => $"Un código cuadrado con la dirección {address}, y las medidas de la pieza al lado.";
}
