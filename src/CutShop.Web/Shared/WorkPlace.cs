using CutShop.Shop.People;

namespace CutShop.Web.Shared;

/// <summary>Where each person's work is.</summary>
public static class WorkPlace
{
    /// <summary>The page that a person of this role wants first: the bench of who works at one, else the list of jobs. Installers have no role: they find a piece by its label.</summary>
    public static string Of(Role role) => role switch
    {
        Role.Cutter => "/cut",
        Role.Driller => "/drill",
        _ => "/",
    };

    /// <summary>The page that whoever asks wants first; for a stranger the one that finds a piece.</summary>
    public static string Of(HttpContext context) => SignedIn.PersonOf(context) is { } person ? Of(person.Role) : "/p";
}
