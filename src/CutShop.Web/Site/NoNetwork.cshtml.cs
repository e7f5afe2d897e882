using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Mvc.RazorPages;

namespace CutShop.Web.Site;

/// <summary>What a browser shows in place of a page that it cannot load: the worker stores it and answers with it.</summary>
[AllowAnonymous]
public sealed class NoNetworkModel : PageModel;
