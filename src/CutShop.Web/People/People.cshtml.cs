using CutShop.Shop.People;
using CutShop.Shop.Store;
using CutShop.Web.Shared;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.People;

/// <summary>The people of the shop, and adding one.</summary>
[Authorize(Policy = Rights.ManagePeople)]
public sealed class PeopleModel(PeopleShelf people, TimeProvider time) : PageModel
{
    /// <summary>Everyone.</summary>
    public IReadOnlyList<Person> Everyone { get; private set; } = [];

    /// <summary>The name typed.</summary>
    public string? Name { get; private set; }

    /// <summary>The role chosen.</summary>
    public Role? Role { get; private set; } = CutShop.Shop.People.Role.Cutter;

    /// <summary>What is wrong, or null.</summary>
    public FieldProblem? Problem { get; private set; }

    /// <summary>The person just added, with the first password.</summary>
    public (string Name, string Password)? Handed { get; private set; }

    /// <summary>The shop's clock.</summary>
    public TimeProvider Time => time;

    /// <summary>Shows everyone.</summary>
    public void OnGet() => Everyone = people.All();

    /// <summary>Adds a person.</summary>
    public async Task OnPostAsync(string? name, string? role)
    {
        (Name, Role) = (name, RoleNames.Find(role));
        if (Role is not { } found)
        {
            Problem = RoleNames.Unknown(role);
        }
        else
        {
            var password = PeopleShelf.DrawPassword();
            var answer = await people.AddAsync(name ?? "", found, password, Who.Of(User), HttpContext.RequestAborted);
            Problem = answer.Problem;
            if (answer.IsDone)
                (Handed, Name) = ((people.Find(answer.Id)!.Name, password), null);
        }
        Everyone = people.All();
    }
}
