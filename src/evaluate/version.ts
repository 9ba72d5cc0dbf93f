/** Version of this package, sealed into dossiers. A test holds it equal to package.json. */
export const LIBRARY_VERSION = "0.1.0";
