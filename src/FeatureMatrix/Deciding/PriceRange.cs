using FeatureMatrix.Model;

namespace FeatureMatrix.Deciding;

/// <summary>What boards like a card were sold for, or asked where no sale was seen; in one currency.</summary>
/// <param name="Low">The lowest.</param>
/// <param name="High">The highest.</param>
/// <param name="Currency">Three letters, as in ISO 4217.</param>
/// <param name="IsSold">True where sales were seen; asking prices are left out then.</param>
public sealed record PriceRange(decimal Low, decimal High, string Currency, bool IsSold)
{
    /// <summary>The prices of a card in a currency; null where none is recorded. An empty currency stands for the first one recorded.</summary>
    public static PriceRange? Of(Card card, string currency)
    {
        var wanted = currency.Length > 0 ? currency : card.Prices.Select(price => price.Currency).FirstOrDefault("");
        var prices = card.Prices.Where(price => price.Currency == wanted).ToList();
        var sold = prices.Where(price => price.Sold).ToList();
        var counted = sold.Count > 0 ? sold : prices;
        return counted.Count == 0 ? null : new PriceRange(counted.Min(price => price.Low), counted.Max(price => price.High), wanted, sold.Count > 0);
    }

    /// <summary>
    /// The price at which a card with this score gives as much score for the money as another at its price; null where the other
    /// scores nothing for certain.
    /// </summary>
    /// <remarks>Equal score for the money: p₁ ÷ S₁ = p₂ ÷ S₂. Cautious at both ends: lowest score and lowest price of the other's
    /// highest score, and the reverse.</remarks>
    public static PriceRange? BreakEven(ScoreInterval own, ScoreInterval other, PriceRange otherPrice)
    {
        if (other.High <= 0 || other.Low <= 0)
            return null;
        return otherPrice with { Low = otherPrice.Low * own.Low / other.High, High = otherPrice.High * own.High / other.Low };
    }
}
