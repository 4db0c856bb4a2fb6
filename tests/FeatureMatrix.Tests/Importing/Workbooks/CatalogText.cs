using System.Collections;
using System.Globalization;
using System.Reflection;
using System.Text;
using FeatureMatrix.Model;

namespace FeatureMatrix.Tests.Importing.Workbooks;

/// <summary>All that a catalog says, as text, without the places it was read from.</summary>
internal static class CatalogText
{
    public static string Of(Catalog catalog)
    {
        var seen = new Dictionary<object, int>(ReferenceEqualityComparer.Instance);
        var text = new StringBuilder();
        foreach (var property in PropertiesOf(catalog).Where(property => property.PropertyType != typeof(string) && property.PropertyType.IsAssignableTo(typeof(IEnumerable))))
        {
            // Facts and observations stand in the order of files and lines, which does not matter.
            var items = ((IEnumerable)property.GetValue(catalog)!).Cast<object>().Select(item => One(item, seen)).ToList();
            text.Append(property.Name).Append(":\n").AppendJoin('\n', property.Name is "Facts" or "Observations" ? items.Order(StringComparer.Ordinal) : items).Append('\n');
        }

        return $"{catalog.Name}|{catalog.Note}|{catalog.Currency}\n{text}";
    }

    private static string One(object? value, Dictionary<object, int> seen)
    {
        switch (value)
        {
            case null:
                return "-";
            case string or Enum or bool or DateOnly:
                return $"\"{value}\"";
            case IFormattable number when value.GetType().IsPrimitive || value is decimal:
                return number.ToString(null, CultureInfo.InvariantCulture);
            case IDictionary map:
                return "{" + string.Join(", ", map.Keys.Cast<object>().Select(key => $"{One(key, seen)}: {One(map[key], seen)}").Order(StringComparer.Ordinal)) + "}";
            case IEnumerable list:
                return "[" + string.Join(", ", list.Cast<object>().Select(item => One(item, seen))) + "]";
            default:
                break;
        }

        var type = value.GetType();
        if (!type.IsValueType && type.GetProperty("Id") is { } id)
        {
            if (!seen.TryAdd(value, 0))
                return $"{type.Name} {id.GetValue(value)}";
        }

        return type.Name + "(" + string.Join(", ", PropertiesOf(value).Select(property => $"{property.Name}={One(property.GetValue(value), seen)}")) + ")";
    }

    private static IEnumerable<PropertyInfo> PropertiesOf(object value) => value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
        .Where(property => property.GetIndexParameters().Length == 0 && property.PropertyType != typeof(Origin) && property.Name != "EqualityContract")
        .OrderBy(property => property.Name, StringComparer.Ordinal);
}
