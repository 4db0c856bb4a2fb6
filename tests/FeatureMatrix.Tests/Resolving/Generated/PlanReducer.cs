using System.Collections;
using System.Reflection;

namespace FeatureMatrix.Tests.Resolving.Generated;

/// <summary>
/// Makes a failing plan as small as it goes: drops list entries and resets numbers one at a time while the plan still
/// fails. Comes after CsCheck's own shrinking, which draws smaller plans but does not take one apart.
/// </summary>
internal static class PlanReducer
{
    public static CatalogPlan Reduce(CatalogPlan plan, Func<CatalogPlan, bool> fails)
    {
        for (var again = true; again;)
        {
            again = false;
            foreach (var smaller in Smaller(plan).Cast<CatalogPlan>())
            {
                if (!Fails(smaller, fails))
                    continue;
                plan = smaller;
                again = true;
                break;
            }
        }

        return plan;
    }

    private static bool Fails(CatalogPlan plan, Func<CatalogPlan, bool> fails)
    {
        try
        {
            return fails(plan);
        }
        catch (Exception error) when (error is ArgumentException or DivideByZeroException or IndexOutOfRangeException or InvalidOperationException)
        {
            return false; // No catalog any more: a list that must not be empty is.
        }
    }

    private static IEnumerable<object> Smaller(object record)
    {
        foreach (var property in record.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.CanWrite))
        {
            foreach (var value in SmallerValues(property.PropertyType, property.GetValue(record)))
                yield return With(record, property, value);
        }
    }

    private static IEnumerable<object?> SmallerValues(Type type, object? value)
    {
        switch (value)
        {
            case null:
                yield break;
            case bool flag:
                if (flag)
                    yield return false;
                yield break;
            case int number:
                if (number > 0)
                    yield return 0;
                if (number >= 0)
                    yield return -1;
                yield break;
            case Enum:
                yield break;
            case IList list:
                foreach (var smaller in SmallerLists(type.GetGenericArguments()[0], list))
                    yield return smaller;
                yield break;
            default:
                foreach (var smaller in Smaller(value))
                    yield return smaller;
                yield break;
        }
    }

    private static IEnumerable<object> SmallerLists(Type item, IList list)
    {
        for (var i = 0; i < list.Count; i++)
        {
            var without = NewList(item, list);
            without.RemoveAt(i);
            yield return without;
        }

        for (var i = 0; i < list.Count; i++)
        {
            foreach (var smaller in Smaller(list[i]!))
            {
                var replaced = NewList(item, list);
                replaced[i] = smaller;
                yield return replaced;
            }
        }
    }

    private static IList NewList(Type item, IList entries)
    {
        var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(item))!;
        foreach (var entry in entries)
            list.Add(entry);
        return list;
    }

    private static object With(object record, PropertyInfo property, object? value)
    {
        var clone = record.GetType().GetMethod("<Clone>$")!.Invoke(record, null)!;
        property.SetValue(clone, value);
        return clone;
    }
}
