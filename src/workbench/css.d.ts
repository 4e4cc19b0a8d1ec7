/** Style sheets are bundled by the build; importing one brings no value. */
declare module '*.css';
