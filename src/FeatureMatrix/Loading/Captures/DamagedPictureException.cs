namespace FeatureMatrix.Loading.Captures;

/// <summary>Says why a file is not taken for a picture. It never leaves this folder: the loader makes a fault of it.</summary>
internal sealed class DamagedPictureException(string reason) : Exception(reason);
