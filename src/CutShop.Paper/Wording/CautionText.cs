namespace CutShop.Paper;

/// <content>The one home of cautions.</content>
public partial class PaperText
{
    /// <summary>Over every list of cautions.</summary>
    public virtual string Cautions => "Take care";

    /// <summary>Cutting rope that melts.</summary>
    public virtual IReadOnlyList<string> CuttingSyntheticCautions =>
    [
        "A hot knife burns at a touch, and so does the melted end: heat-proof gloves, and let the end cool before handling.",
        "Melting rope gives off harmful fumes: ventilate, keep your face out of them, seal the end without letting it smoke or char.",
        "Fire: clear the bench, keep an extinguisher in reach, never leave a hot knife switched on alone.",
    ];

    /// <summary>Cutting rope that grew.</summary>
    public virtual IReadOnlyList<string> CuttingNaturalCautions =>
    [
        "Natural fibre does not melt: cut it cold, with a sharp blade, away from yourself and on a clear bench. No flame, no heated blade.",
        "The strands spring open where they are not bound: tape or whip before the blade touches.",
        "Gloves for handling; fibre dust is irritating, keep it off face and eyes.",
    ];

    /// <summary>Drilling with large bits.</summary>
    public virtual IReadOnlyList<string> DrillingCautions =>
    [
        "A large bit can stick and throw the drill round: clamp the post, side handle on, both hands, firm footing, no loose gloves or sleeves at the bit.",
        "Eye protection. Sharp bit, let it cut, do not force it; ease off as it breaks through.",
        .. TimberCautions,
    ];

    /// <summary>Working treated timber.</summary>
    public virtual IReadOnlyList<string> TimberCautions =>
    [
        "Treated wood: wear mask and goggles against the dust, sweep it up, wash hands before eating, never burn the waste.",
    ];

    /// <summary>The finished railing.</summary>
    public virtual IReadOnlyList<string> RailingCautions =>
    [
        "A rope railing is not a guard and not fall protection. Where one is needed, the local code and a licensed professional decide.",
    ];

    /// <summary>Weights and pulls.</summary>
    public virtual string PullCaution =>
        "Weights are estimates from published tables. The pull is that of the resting rope by its own weight alone; a person who leans or sits on a rope pulls many times harder. Not for structural design.";
}
