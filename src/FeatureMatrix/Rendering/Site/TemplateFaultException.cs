namespace FeatureMatrix.Rendering.Site;

/// <summary>A template is missing or wrong. The message names file, line and column.</summary>
public sealed class TemplateFaultException(string message) : Exception(message);
