namespace CutShop.Shop.Orders;

/// <summary>Leads from a path in the job file to the field of the form that it came from, or to the smallest group that holds it.</summary>
internal sealed class NotePlaces
{
    private readonly HashSet<string> _places = [""];

    public NotePlaces(IEnumerable<string> fields)
    {
        foreach (var field in fields)
        {
            for (var place = field; place.Length > 0 && _places.Add(place);)
                place = Above(place);
        }
    }

    /// <summary>The field or group of a job file's path.</summary>
    public string Of(string path)
    {
        var place = path.StartsWith("$.", StringComparison.Ordinal) ? path[2..] : "";
        // The two ways of measuring a section share one field.
        if (place.EndsWith("].clear", StringComparison.Ordinal) || place.EndsWith("].centres", StringComparison.Ordinal))
            place = place[..place.LastIndexOf('.')] + ".width";
        while (!_places.Contains(place))
            place = Above(place);
        return place;
    }

    private static string Above(string place)
    {
        var dot = place.LastIndexOfAny(['.', '[']);
        if (dot < 0)
            return "";
        // lines[0] is a group; the list lines by itself is not.
        return place[dot] == '[' ? Above(place[..dot]) : place[..dot];
    }
}
