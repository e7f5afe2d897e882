namespace CutShop.Paper;

/// <content>Words of hanging rope on site.</content>
internal sealed partial class SpanishText
{
    public override string AboveGround(string height) => $"a {height} del suelo";

    public override string PilotHole(string diameter) => $"guía de {diameter}";

    public override string HeadInTheRope => "cabeza por debajo de la superficie de la cuerda";

    public override string CountersunkFlush(string across) => $"avellanado de {across} hasta que la cabeza quede a ras";

    public override string Counterbored(string across, string deep) => $"rebaje de {across} de ancho y {deep} de hondo";

    public override string LayOut(string start, string finish, bool finishTakesUp) => finishTakesUp
        ? $"Tienda la cuerda a lo largo de la línea sin torcerla. Empiece en {start}: ese extremo no se puede alargar ni acortar; el de {finish} absorbe lo que varíe la obra."
        : $"Tienda la cuerda a lo largo de la línea sin torcerla. Empiece en {start} y trabaje hacia {finish}.";

    public override string FirstRopeIsIn(string corner, string firstRun) =>
        $"Compruebe que {firstRun} está puesta y atornillada en la esquina {corner}: esta pieza es allí la segunda cuerda.";

    public override string EndInBore(string post, bool isStart) => isStart
        ? $"{post}: meta el extremo hasta el fondo del agujero, sujételo y ponga su tornillo."
        : $"{post}: meta el extremo hasta el fondo del agujero. Cuando todas las secciones cuelguen bien, ponga su tornillo.";

    public override string FirstAtCorner(string post) =>
        $"{post}, esquina, primera cuerda: meta el extremo hasta el centro del poste y ponga su tornillo. La segunda cuerda se apoya en su costado.";

    public override string SecondAtCorner(string post) =>
        $"{post}, esquina, segunda cuerda: meta el extremo hasta que toque la primera cuerda y ponga el tornillo largo a través de la primera hasta esta.";

    public override string TieKnot(string post, string inner, bool isStart) => isStart
        ? $"{post}: el nudo va detrás del poste, del lado opuesto a {inner}. Haga un nudo de tope en el extremo, pase la cuerda hacia {inner} y tire hasta que el nudo apriete contra el poste. Sin tornillo."
        : $"{post}: el nudo va detrás del poste, del lado opuesto a {inner}. Cuando todas las secciones cuelguen bien, haga un nudo de tope apretado contra el poste. Sin tornillo. No corte nada antes.";

    public override string PassThrough(string posts) => $"Pase la cuerda por {posts}. Todavía sin tornillos.";

    public override string PullStraight(string first, string second) => $"{first} – {second}: tense la cuerda recta a lo largo de un cordel tendido de poste a poste.";

    public override string SetSag(string first, string second, string sag) =>
        $"{first} – {second}: tienda un cordel por donde la cuerda toca los dos postes. En el medio la cuerda cuelga {sag} por debajo del cordel.";

    public override string DriveLineScrew(string post) => $"{post}: sujete la cuerda así y ponga su tornillo por el costado.";

    public override string WindRound(string post, decimal turns, bool clockwise) => Say(
        $"{post}: enrolle la cuerda {turns:0.#} {(turns == 1 ? "vuelta" : "vueltas")} al poste, {(clockwise ? "en sentido de las agujas del reloj" : "en sentido contrario a las agujas del reloj")} visto desde arriba, cada vuelta pegada a la anterior y la del medio a la altura de la fila. Apriete y ponga los tornillos.");
}
